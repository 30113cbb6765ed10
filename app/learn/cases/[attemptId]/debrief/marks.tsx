import { useTranslations } from 'next-intl';
import type { DebriefView } from '@/app/_server/debrief-view';
import ui from '@/app/_ui/ui.module.css';
import styles from './debrief.module.css';

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
function Notes({ view, notes }: { view: DebriefView; notes: DebriefView['grade']['notes'] }) {
  const t = useTranslations('debrief');
  const run = useTranslations('conditionsShort');
  const two = notes.some(({ code }) => code === 'two-causes');
  const said = notes.flatMap(({ code, values }) => {
    const [plain, ofTwo] = [`notes.${code}`, `notesOfTwo.${code}`] as Parameters<DebriefWords>[0][];
    const key = two && ofTwo && t.has(ofTwo) ? ofTwo : plain;
    const reading = view.attempt.readings.find(({ seq }) => seq === values.seq);
    const named = reading && { reading: `${reading.check.name}, ${run(reading.condition)}` };
    return key && t.has(key) ? [t(key, { ...values, ...named })] : [];
  });
  return (
    <ul className={styles.notes}>
      {[...new Set(said)].map((sentence) => (
        <li key={sentence}>{sentence}</li>
      ))}
    </ul>
  );
}
