/** How much of the picture the bar above and the tools below it cover, pixels; our choice. */
export const coveredBy = ({ width }: { readonly width: number }): { above: number; below: number } =>
  width < 600 ? { above: 56, below: 68 } : { above: 64, below: 36 };
