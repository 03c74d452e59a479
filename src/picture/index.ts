export { pictureSvg } from './sheet.ts';
export type { PictureWords } from './words.ts';
