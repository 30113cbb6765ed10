import type { RandomStream } from '../../../random';
import type { DrawnBody } from '../../kind';
import type { Line } from '../../line';
import type { Album, Picture } from './album';
import type { ReadTraceRanges } from './ranges';
import { beside, faultWords, ruleWords, seconds, stemWords, traceFigure } from './trace-words';

type Asked = Omit<DrawnBody, 'topics'>;

/** Where does a trace first go wrong, or nowhere? Undefined where no picture is beyond dispute. */
export function whereQuestion(
  stream: (name: string) => RandomStream,
  album: Album,
  pictures: readonly Picture[],
  { hiddenShare, nowhereShare }: ReadTraceRanges,
): { picture: Picture; asked: Asked } | undefined {
  if (album.stretches.length === 0) return undefined;
  // Where every fault shows in the same stretch, there must be something to decide all the same.
  const one = placesIn(album.pictures).length < 2;
  const hidden = stream('hidden').next() < (one ? EVEN : hiddenShare);
  const picture = hidden
    ? oneOf(
        stream,
        pictures.filter((shown) => shown.hidden),
      )
    : goesWrong(stream, pictures);
  if (!picture) return undefined;
  const nowhere = one || hidden || stream('nowhere').next() < nowhereShare;
  return { picture, asked: nowhere ? withNowhere(album, picture) : withoutNowhere(album, picture) };
}

const EVEN = 0.5;

function oneOf(stream: (name: string) => RandomStream, pictures: readonly Picture[]): Picture | undefined {
  return pictures.length > 0 ? stream('picture').pick(pictures) : undefined;
}

/** Every stretch as likely as the next, however many causes show there. */
function goesWrong(stream: (name: string) => RandomStream, pictures: readonly Picture[]): Picture | undefined {
  const places = placesIn(pictures);
  if (places.length === 0) return undefined;
  const place = stream('place').pick(places);
  return oneOf(
    stream,
    pictures.filter(({ wrong }) => wrong?.stretch === place),
  );
}

/** Stretches in which something first goes wrong. */
function placesIn(pictures: readonly Picture[]): number[] {
  return [...new Set(pictures.flatMap(({ wrong }) => wrong?.stretch ?? []))].sort();
}

function withoutNowhere(album: Album, picture: Picture): Asked {
  const right = album.stretches[picture.wrong?.stretch ?? 0]?.id ?? '';
  return {
    stem: [...stemWords(album), { say: 'askWhere' }],
    ...common(album, picture, 0),
    answer: { form: 'stretch', stretches: album.stretches },
    key: { form: 'stretch', right: [right] },
    guessFloor: Number((1 / album.stretches.length).toFixed(3)),
  };
}

function withNowhere(album: Album, picture: Picture): Asked {
  const { stretches } = album;
  const nowhere = String.fromCharCode(97 + stretches.length);
  const right = picture.wrong ? (stretches[picture.wrong.stretch]?.id ?? '') : nowhere;
  const options = stretches.map(({ id, from, to }) => ({
    id,
    line: { say: 'stretch', with: { letter: id.toUpperCase(), from: seconds(from), to: seconds(to) } },
  }));
  const wrong = [...options.map(({ id }) => id), nowhere].filter((id) => id !== right);
  return {
    stem: [...stemWords(album), { say: 'askWhereOrNowhere' }],
    ...common(album, picture, 1),
    answer: { form: 'choice', options: [...options, { id: nowhere, line: { say: 'nowhere' } }] },
    key: {
      form: 'choice',
      right: [right],
      because: Object.fromEntries(wrong.map((id) => [id, becauseOf(album, picture, id)])),
    },
    guessFloor: Number((1 / (stretches.length + 1)).toFixed(3)),
  };
}

function common(album: Album, picture: Picture, nowhere: number) {
  const { wrong } = picture;
  const found: Line[] = wrong
    ? [foundWords(album, picture, wrong), faultWords(picture)]
    : [beside('nothing', album, picture, picture.farthest), { ...faultWords(picture), say: 'elsewhere' }];
  return {
    figure: traceFigure(album, picture, album.stretches),
    explanation: [...found, ruleWords(album)],
    features: { nowhere, hidden: Number(picture.hidden), later: Math.max(0, (wrong?.stretch ?? 0) - 1), cause: 0 },
    steps: 1,
    seconds: 75,
  };
}

function foundWords(album: Album, picture: Picture, { stretch, point }: NonNullable<Picture['wrong']>): Line {
  const line = beside(stretch === 0 ? 'wrongAtOnce' : 'wrongFrom', album, picture, point);
  const { id = '', from = 0 } = album.stretches[stretch] ?? {};
  return 'say' in line ? { ...line, with: { ...line.with, letter: id.toUpperCase(), from: seconds(from) } } : line;
}

/** What speaks against naming a stretch, or none. */
function becauseOf(album: Album, picture: Picture, id: string): Line {
  const index = album.stretches.findIndex((one) => one.id === id);
  const { wrong } = picture;
  if (!wrong) return beside('notThere', album, picture, picture.farthest);
  if (index < 0) return beside('notNowhere', album, picture, wrong.point);
  return beside(index < wrong.stretch ? 'notYet' : 'already', album, picture, wrong.point);
}
