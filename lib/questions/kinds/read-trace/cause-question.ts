import type { RandomStream } from '../../../random';
import type { DrawnBody } from '../../kind';
import type { Line } from '../../line';
import { type Choice, shuffled, shuffledOptions } from '../../shared/shuffled-options';
import type { Album, Picture } from './album';
import { farthest, outside } from './departure';
import type { ReadTraceRanges } from './ranges';
import { beside, faultWords, ruleWords, seconds, stemWords, traceFigure, valueIn } from './trace-words';

type Asked = Omit<DrawnBody, 'topics'>;

/** Causes that are offered, beside “nothing wrong”. */
const CAUSES = 3;
/** Where fewer causes show at all, naming one without looking must not do. */
const FEW = 3;
const EVEN = 0.5;
/** A trace lies so many times outside of what is plain of everything that another cause can do to it. */
const APART = 1.5;

/** What does a trace show: one of some causes, or nothing wrong? Undefined where two could be meant. */
export function causeQuestion(
  stream: (name: string) => RandomStream,
  album: Album,
  pictures: readonly Picture[],
  { hiddenShare }: ReadTraceRanges,
): { picture: Picture; asked: Asked } | undefined {
  const shows = new Set(album.pictures.flatMap(({ plain, fault }) => (plain ? fault.cause.id : [])));
  const hidden = stream('hidden').next() < (shows.size < FEW ? EVEN : hiddenShare);
  const possible = pictures.filter((one) => (hidden ? one.hidden : one.plain));
  if (possible.length === 0) return undefined;
  const picture = stream('picture').pick(possible);
  const others = othersBeside(stream, album, picture).slice(0, hidden ? CAUSES : CAUSES - 1);
  if (others.length < (hidden ? CAUSES : CAUSES - 1)) return undefined;
  return { picture, asked: asking(stream, album, picture, others) };
}

/** Another cause at its severest, and where the trace shown lies farthest from all that it can do. */
interface Other {
  picture: Picture;
  point: number;
}

/** Causes that the trace does not show, those first that show on such a trace too. */
function othersBeside(stream: (name: string) => RandomStream, album: Album, shown: Picture): Other[] {
  const found = [...album.reach].flatMap(([id, reach]) => {
    const all = album.pictures.filter(({ fault }) => fault.cause.id === id);
    const severest = all[all.length - 1];
    const [line] = shown.lines;
    if (!severest || !line || id === shown.fault.cause.id) return [];
    if (shown.hidden) return [{ picture: severest, point: severest.farthest }];
    const apart = outside(line, reach);
    const point = farthest(apart);
    return Math.abs(apart[point] ?? 0) >= APART * album.tolerance.plain ? [{ picture: severest, point }] : [];
  });
  const mixed = shuffled(stream('others'), found);
  return [...mixed.filter(({ picture }) => picture.plain), ...mixed.filter(({ picture }) => !picture.plain)];
}

function asking(
  stream: (name: string) => RandomStream,
  album: Album,
  picture: Picture,
  others: readonly Other[],
): Asked {
  const choices: Choice[] = [
    ...(picture.hidden ? [] : [{ line: causeWords(picture) }]),
    ...others.map((other) => ({ line: causeWords(other.picture), because: against(album, picture, other) })),
    picture.hidden
      ? { line: { say: 'nothingWrong' } }
      : { line: { say: 'nothingWrong' }, because: beside('notNowhere', album, picture, picture.farthest) },
  ];
  const { options, right, because } = shuffledOptions(stream('options'), choices);
  const found = picture.hidden
    ? [beside('nothing', album, picture, picture.farthest), { ...faultWords(picture), say: 'elsewhere' }]
    : [beside('farthest', album, picture, picture.farthest), faultWords(picture)];
  return {
    stem: [...stemWords(album), { say: 'askCause' }],
    figure: traceFigure(album, picture, []),
    answer: { form: 'choice', options },
    key: { form: 'choice', right, because },
    explanation: [...found, ...others.map((other) => against(album, picture, other)), ruleWords(album)],
    features: { nowhere: 0, hidden: Number(picture.hidden), later: 0, cause: 1 },
    guessFloor: Number((1 / options.length).toFixed(3)),
    steps: 1,
    seconds: 90,
  };
}

function causeWords({ fault: { cause } }: Picture): Line {
  return { say: 'cause', with: { cause: { name: 'cause', id: cause.id } } };
}

/** What speaks against a cause: the trace would look otherwise, or would tell nothing of it. */
function against({ sound: [line] }: Album, shown: Picture, { picture, point }: Other): Line {
  const cause = { name: 'cause' as const, id: picture.fault.cause.id };
  if (shown.hidden && !picture.plain) return { say: 'showsNot', with: { cause } };
  return {
    say: 'against',
    with: {
      cause,
      time: seconds(line?.times[point] ?? 0),
      there: valueIn(picture, point),
      here: valueIn(shown, point),
    },
  };
}
