import type { Note } from '../grading/grade';
import type { EveryCasePart } from '../topics/topic';
import { type GradedCase, meanShare, type Parts, type Piece, verdictShare } from './pieces-of-case';

/** What a case tells of a topic that every case practises; nothing where nothing of the kind was done. */
export function everyCasePieces(of: readonly EveryCasePart[], graded: GradedCase, parts: Parts): Piece[] {
  return of.flatMap((part) => piecesOf(part, graded, parts));
}

function piecesOf(part: EveryCasePart, graded: GradedCase, parts: Parts): Piece[] {
  switch (part) {
    case 'route':
    case 'reasons':
      return [{ share: parts.share(part), weight: parts.weight(part) }];
    case 'proof':
      return [proofPiece(graded, parts)];
    case 'practice':
      // Whoever touched nothing did nothing unsafe, and showed nothing either.
      return graded.readings.length > 0 ? [{ share: parts.share('practice'), weight: parts.weight('practice') }] : [];
    case 'instruments':
      return instrumentPieces(graded, parts);
  }
}

/** Of a call's points that proof brings where no note says. @source The standard rubric. */
const PROOF_OF_CALL = 0.2;

function proofPiece({ grade }: GradedCase, parts: Parts): Piece {
  const note = grade.notes.find(({ code }) => code === 'proof-right' || code === 'proof-wrong');
  const outOf = grade.parts.find(({ part }) => part === 'call')?.outOf ?? 0;
  const most = Number(note?.values.outOf ?? 0);
  const weight = parts.weight('call') * (outOf > 0 && most > 0 ? most / outOf : PROOF_OF_CALL);
  const shown = most > 0 && note?.points !== undefined ? note.points / most : Number(grade.callCorrect.proof);
  return { share: parts.given('call') ?? shown, weight };
}

const wrongInstrument = ['off-scale', 'too-coarse', 'instrument-destroyed', 'cranked-low-range'];

/** How dials were read and their error minded, and which instruments were chosen: half each. */
function instrumentPieces({ grade, readings }: GradedCase, parts: Parts): Piece[] {
  const read = grade.findings.filter(({ shown }) => shown !== null);
  if (read.length === 0) return [];
  const given = parts.given('verdicts');
  const share = given ?? meanShare(read.map((finding) => ({ share: readingShare(finding), weight: 1 })));
  const wrong = new Set(grade.notes.filter(isWrongInstrument).map(({ values }) => values.seq));
  const chosen = parts.given('practice') ?? 1 - wrong.size / Math.max(1, readings.length);
  return [
    { share, weight: 1 },
    { share: chosen, weight: 1 },
  ];
}

function isWrongInstrument({ code }: Note): boolean {
  return wrongInstrument.includes(code);
}

/** The dial, the comparison with the limit, and the verdict where cannot tell was right. */
function readingShare(finding: GradedCase['grade']['findings'][number]): number {
  const { dialRight, dialShare, comparisonRight, expectedVerdict } = finding;
  const shares = [
    ...(dialRight === null ? [] : [dialShare ?? Number(dialRight)]),
    Number(comparisonRight),
    ...(expectedVerdict === 'cannot-tell' ? [verdictShare(finding)] : []),
  ];
  return meanShare(shares.map((share) => ({ share, weight: 1 })));
}
