import type { WrittenForm } from '../../questions/written/written-forms';

/** Names of the 1EdTech standard QTI 3.0, as its documents give them. @source 1EdTech QTI 3.0, by ../shared/reference/competency.md 4.3 */
export const ITEM_NAMESPACE = 'http://www.imsglobal.org/xsd/imsqtiasi_v3p0';
export const MANIFEST_NAMESPACE = 'http://www.imsglobal.org/xsd/qti/qtiv3p0/imscp_v1p1';
/** @source IEEE 1484.12.3, from memory */
export const METADATA_NAMESPACE = 'http://ltsc.ieee.org/xsd/LOM';
export const ITEM_TYPE = 'imsqti_item_xmlv3p0';
/** Pictures and whatever else an item needs. */
export const CONTENT_TYPE = 'webcontent';

export const MANIFEST = 'imsmanifest.xml';

/** What other readers of a package will not get of a question. */
export type Loss =
  /** Design difficulty stands in our own file alone; topics and time are told in the manifest. */
  | 'difficulty'
  /** Elsewhere an order earns all its marks or none. */
  | 'marks-of-an-order'
  /** Elsewhere a number is in the unit that is written beside it. */
  | 'other-units'
  /** The standard has no counterpart to a drawing of ours: the question lies in our own file alone. */
  | 'place-on-drawing';

const losses: Readonly<Record<WrittenForm, readonly Loss[]>> = {
  choice: ['difficulty'],
  several: ['difficulty'],
  numbers: ['difficulty', 'other-units'],
  order: ['difficulty', 'marks-of-an-order'],
  point: ['place-on-drawing'],
  spot: ['difficulty'],
  words: ['difficulty'],
};

/** What other readers will not get of any question of a form. */
export function lossesOf(form: WrittenForm): readonly Loss[] {
  return losses[form];
}

/** What could not be taken of an item that somebody else made or changed, or had to be assumed for it. */
export const warnings = [
  'markup-dropped',
  'picture-missing',
  'pictures-dropped',
  'feedback-dropped',
  'marking-dropped',
  'shape-made-a-box',
  'draws-made-coarse',
  'topic-assumed',
  'time-assumed',
  'difficulty-assumed',
  'explanation-missing',
  'changed-elsewhere',
] as const;
export type Warning = (typeof warnings)[number];

/** Why an item or a package is not taken. */
export const refusals = [
  'not-a-zip',
  'too-many-files',
  'too-large',
  'bomb',
  'bad-path',
  'file-twice',
  'no-manifest',
  'not-utf-8',
  'doctype',
  'entity',
  'not-xml',
  'too-deep',
  'attribute-long',
  'not-qti-3',
  'nothing-in-it',
  'file-missing',
  'unknown-interaction',
  'several-interactions',
  'no-key',
  'template',
  'picture-unusable',
  'too-many-items',
  'not-valid',
] as const;
export type Refusal = (typeof refusals)[number];

export interface Refused {
  refused: Refusal;
  /** Path in the package; empty for the package itself. */
  file: string;
  /** The element, attribute or file that it stands on. */
  what: string;
  /** Line in the file, counted from 1, where it is known. */
  line?: number;
}
