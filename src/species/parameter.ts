/** A figure of the trade with its range and its source; those the grower may change are settings. */
export interface Parameter {
  readonly name: string;
  readonly value: number;
  readonly min: number;
  readonly max: number;
  readonly unit: string;
  /** Author, year, table; or "from memory", "common practice", "derived", "our choice". */
  readonly source: string;
  /** high: measured or published and seen. medium: a related species or firm practice. low: rule of thumb. */
  readonly confidence: 'high' | 'medium' | 'low';
  /** Whether a grower may set it within min to max. */
  readonly adjustable: boolean;
  readonly note?: string;
}
