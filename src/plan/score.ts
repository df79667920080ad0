/** What a canopy is worth. */
export interface Score {
  /** Main crop figs expected to ripen this season. */
  readonly ripeFigs: number;
  /** First-crop (last year's wood) figs expected. */
  readonly firstCropFigs: number;
  /** Shoot length whose light reaches fruiting light, metres. */
  readonly fruitingWoodM: number;
  readonly shootCount: number;
  /** Shoots below half of fruiting light. */
  readonly deepShadeCount: number;
  readonly leafAreaM2: number;
  /** Mean over shoots of their share of open sky. */
  readonly meanLight: number;
}
