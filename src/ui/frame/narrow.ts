/** Whether the sheet lies over the stage, as on a phone; the same width as in the style sheets. */
export const isNarrow = (): boolean => matchMedia('(max-width: 899px)').matches;
