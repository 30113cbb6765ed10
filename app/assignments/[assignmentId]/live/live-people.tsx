'use client';

import type { LiveLine, LiveView } from '@/app/_server/assignments/live-view';
import { ActForm } from '@/app/_ui/act-form';
import type { ActResult } from '@/app/_ui/act-result';
import ui from '@/app/_ui/ui.module.css';
import type messages from '@/content/messages/en.json';
import styles from '../../assignments.module.css';
import { useLive } from './use-live';

type Words = (typeof messages)['assignments']['live'] & { failed: string };

type Send = (form: FormData) => Promise<ActResult>;

/** Who is where, kept new, and room to write to each. */
export function LivePeople({
  assignmentId,
  first,
  words,
  send,
}: {
  assignmentId: string;
  first: LiveView;
  words: Words;
  /** Left out for somebody who may only look. */
  send?: Send;
}) {
  const { view, connection } = useLive(`/assignments/${assignmentId}/live/now`, first);
  const { col } = words;
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-label={words.title}>
      <p>
        <b>{view.counts}</b> <span className={ui.small}>{connection === 'here' && view.updated}</span>
      </p>
      <div role="status">
        {connection !== 'here' && <p className={ui.alert}>{connection === 'lost' ? view.lost : words.ended}</p>}
      </div>
      {view.lines.length === 0 && <p>{words.nobody}</p>}
      <table className={styles.people}>
        <thead>
          <tr>
            <th scope="col">{col.name}</th>
            <th scope="col">{col.where}</th>
            <th scope="col">{col.minutes}</th>
            <th scope="col">{col.safety}</th>
            {send && <th scope="col">{col.message}</th>}
          </tr>
        </thead>
        <tbody>
          {view.lines.map((line) => (
            <tr key={line.key} data-state={line.state}>
              <th scope="row">{line.name}</th>
              <td data-label={col.where}>
                {line.where}
                {line.notes.map((note) => (
                  <div key={note} className={styles.callFor}>
                    {note}
                  </div>
                ))}
              </td>
              <td data-label={col.minutes}>{line.minutes || '–'}</td>
              <td data-label={col.safety} className={line.safety.count > 0 ? styles.danger : undefined}>
                {line.safety.words}
              </td>
              {send && (
                <td>
                  <Nudge line={line} assignmentId={assignmentId} words={words} send={send} />
                </td>
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function Nudge({
  line: { key, name },
  assignmentId,
  words,
  send,
}: {
  line: LiveLine;
  assignmentId: string;
  words: Words;
  send: Send;
}) {
  return (
    <details>
      <summary className={styles.summary}>{words.nudge.replace('{name}', name)}</summary>
      <ActForm
        className={ui.stack}
        action={send}
        submit={words.send}
        failed={words.failed}
        done={words.sent}
        clears
        quiet
      >
        <input type="hidden" name="assignmentId" value={assignmentId} />
        <input type="hidden" name="personKey" value={key} />
        <label className={ui.field}>
          <span>{words.text.replace('{name}', name)}</span>
          <input name="text" required maxLength={200} autoComplete="off" />
        </label>
        <p className={ui.small}>{words.rule}</p>
      </ActForm>
    </details>
  );
}
