import { render } from 'preact';
import { App } from './app.tsx';
import './style.css';
import './print.css';

const page = document.getElementById('page');
if (page) render(<App />, page);
