/** How a stretch of text is meant; a terminal may show it in colour. */
export type Style = 'heading' | 'good' | 'bad' | 'warn' | 'faint' | 'strong';
export type Paint = (style: Style, text: string) => string;
/** No colour: for files, pipes and `NO_COLOR`. */
export const noPaint: Paint = (_style, text) => text;
