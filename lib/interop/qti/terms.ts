import type { WrittenForm } from '../../questions/written/written-forms';

/** Names of the 1EdTech standard QTI 3.0, as its documents give them. @source 1EdTech QTI 3.0, by ../shared/reference/competency.md 4.3 */
export const ITEM_NAMESPACE = 'http://www.imsglobal.org/xsd/imsqtiasi_v3p0';
export const MANIFEST_NAMESPACE = 'http://www.imsglobal.org/xsd/qti/qtiv3p0/imscp_v1p1';
export const ITEM_TYPE = 'imsqti_item_xmlv3p0';
/** Pictures and whatever else an item needs. */
export const CONTENT_TYPE = 'webcontent';
export const MATCH_CORRECT = 'https://purl.imsglobal.org/spec/qti/v3p0/rptemplates/match_correct';
export const MAP_RESPONSE = 'https://purl.imsglobal.org/spec/qti/v3p0/rptemplates/map_response';

export const MANIFEST = 'imsmanifest.xml';

/** A question with the id that it goes by. */
export interface ExportedQuestion<Q> {
  id: string;
  question: Q;
}

/** What other readers of a package will not get of a question. */
export type Loss =
  /** Topics, difficulty and expected time stand in our own file alone. */
  | 'topics-and-difficulty'
  /** Numbers are drawn by the standard's own templates; the formula only where it can be written in them. */
  | 'formula-not-expressed'
  /** Words for whoever does not see a place. */
  | 'names-of-areas'
  /** A place on a drawing of ours has no counterpart. */
  | 'place-on-drawing';

/** What could not be taken of an item of somebody else's. */
export type Warning =
  | 'markup-dropped'
  | 'picture-missing'
  | 'picture-dropped'
  | 'partial-marks-dropped'
  | 'feedback-dropped'
  | 'topic-assumed'
  | 'explanation-missing'
  | 'shape-made-a-box'
  | 'numbers-not-drawn';

/** Why an item or a package is not taken. `what` is the element, attribute or file that it stands on. */
export type Refusal =
  | 'not-a-zip'
  | 'too-many-files'
  | 'too-large'
  | 'bad-path'
  | 'file-twice'
  | 'no-manifest'
  | 'not-utf-8'
  | 'doctype'
  | 'not-xml'
  | 'too-deep'
  | 'not-qti-3'
  | 'file-missing'
  | 'unknown-interaction'
  | 'several-interactions'
  | 'no-key'
  | 'too-many-items'
  | 'not-valid';

export interface Refused {
  refused: Refusal;
  file: string;
  what: string;
}

/** The interaction of the standard that a form is written as; none where there is no counterpart. */
export const interactionOf: Readonly<Record<WrittenForm, string | null>> = {
  choice: 'qti-choice-interaction',
  several: 'qti-choice-interaction',
  numbers: 'qti-text-entry-interaction',
  order: 'qti-order-interaction',
  point: null,
  spot: 'qti-hotspot-interaction',
  words: 'qti-extended-text-interaction',
};
