import { useFormatter, useTranslations } from 'next-intl';
import type { DebriefView } from '@/app/_server/debrief-view';
import ui from '@/app/_ui/ui.module.css';
import type { Note } from '@/lib/grading/grade';
import styles from './debrief.module.css';
import { useNoteWords } from './note-words';

/** Points by part, each with its reasons. */
export function Marks({ view }: { view: DebriefView }) {
  const { grade } = view;
  const t = useTranslations('debrief');
  return (
    <section className={ui.panel} aria-labelledby="marks">
      <div className={ui.head}>
        <h2 id="marks">{t('marks')}</h2>
      </div>
      <ul className={styles.parts}>
        {grade.parts.map(({ part, points, outOf }) => (
          <li key={part}>
            <p className={styles.part}>
              <span>{t(`parts.${part}`)}</span>
              <span className={styles.bar} aria-hidden="true">
                <i style={{ width: `${Math.round((100 * points) / outOf)}%` }} />
              </span>
              <b>{t('points', { points: String(points), outOf: String(outOf) })}</b>
            </p>
            <Notes view={view} notes={grade.notes.filter((note) => note.part === part)} />
          </li>
        ))}
      </ul>
    </section>
  );
}

type DebriefWords = ReturnType<typeof useTranslations<'debrief'>>;

/** The grade speaks in codes; one that has no words here is left out. */
export function Notes({ view, notes }: { view: DebriefView; notes: readonly Note[] }) {
  const t = useTranslations('debrief');
  const named = useNoteWords(view);
  const two = notes.some(({ code }) => code === 'two-causes');
  const said = notes.flatMap((note) => {
    const { code, points, values } = note;
    const [plain, ofTwo] = [`notes.${code}`, `notesOfTwo.${code}`] as Parameters<DebriefWords>[0][];
    const key = two && ofTwo && t.has(ofTwo) ? ofTwo : plain;
    return key && t.has(key)
      ? [{ id: [code, ...Object.values(values)].join(' '), sentence: t(key, named(note)), points }]
      : [];
  });
  const once = said.filter(({ sentence }, index) => index === said.findIndex((other) => other.sentence === sentence));
  // Each with its points is a line of an account; without, what is said twice is said once.
  const shown = said.some(({ points }) => points !== undefined) ? said : once;
  return (
    <ul className={styles.notes}>
      {shown.map(({ id, sentence, points }) => (
        <li key={id}>
          {points !== undefined && <Points points={points} />}
          <span>{sentence}</span>
        </li>
      ))}
    </ul>
  );
}

function Points({ points }: { points: number }) {
  const { number } = useFormatter();
  const text = number(points, { signDisplay: 'exceptZero', maximumFractionDigits: 1 });
  return <span className={points < 0 ? styles.lost : styles.won}>{text}</span>;
}
