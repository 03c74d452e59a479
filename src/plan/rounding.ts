/** How figures of an effect are rounded for show: no more digits than a bench can tell apart. */
export const rounded = (value: number): number => Math.round(value);
export const tenths = (value: number): number => Math.round(value * 10) / 10;
export const hundredths = (value: number): number => Math.round(value * 100) / 100;
