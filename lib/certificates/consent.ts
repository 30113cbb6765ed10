/** What the holder of a certificate agreed to have shown to whoever has its address. */
export interface Consent {
  /** Their name; otherwise it stands there without one. */
  name: boolean;
  /** Which topics were shown, and how well. */
  results: boolean;
}
