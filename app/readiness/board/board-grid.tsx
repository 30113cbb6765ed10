'use client';

import { PeopleGrid } from '@/app/_ui/people-grid/people-grid';
import type { BoardCell, BoardPerson } from '@/lib/readiness/board';
import type { BoardView } from '@/lib/readiness/board-view';
import { DecisionMark } from '../decision-mark';
import styles from '../readiness.module.css';
import { shownChance } from '../shown-chance';
import { type BoardWords, daysWord } from './board-words';

/** Columns before those of the topics. */
const LEADING = ['signed', 'safety'] as const;

/** People × topics: what the evidence says, in words and signs; the numbers behind it on demand. */
export function BoardGrid({
  profileId,
  topics,
  people,
  view,
  words,
  showsNumbers,
  sort,
  onAt,
}: {
  profileId: string;
  topics: readonly { id: string; title: string }[];
  people: readonly BoardPerson[];
  view: BoardView;
  words: BoardWords;
  showsNumbers: boolean;
  sort: (by: string) => void;
  onAt: (person: BoardPerson | undefined, topic: number) => void;
}) {
  const columns = [...LEADING.map((id) => ({ id, title: words[id] })), ...topics];
  return (
    <PeopleGrid
      className={styles.board}
      words={words}
      people={people}
      summary={{
        id: 'decision',
        title: words.decision,
        shown: ({ decision }) => <DecisionMark decision={decision} word={words.decisions[decision]} />,
      }}
      columns={columns}
      cell={(person, column) => {
        const topic = person.cells[column - LEADING.length];
        if (topic) return <TopicCell cell={topic} words={words} showsNumbers={showsNumbers} />;
        return (
          <span className={styles.said}>
            {column === 0 ? signedWord(person, words) : words.safeties[person.safety]}
          </span>
        );
      }}
      hrefOf={({ id }) => `/readiness/${id}/${profileId}`}
      sorted={{ by: view.sort, down: view.down }}
      sort={sort}
      onAt={(person, column) => onAt(person, column - LEADING.length)}
    />
  );
}

function TopicCell({ cell, words, showsNumbers }: { cell: BoardCell; words: BoardWords; showsNumbers: boolean }) {
  const { decision, missing, chance, responses, changesIn } = cell;
  return (
    <span className={styles.topicCell}>
      <DecisionMark
        decision={decision}
        word={missing === undefined ? words.decisions.ready : words.missings[missing]}
      />
      {showsNumbers ? (
        <span className={styles.numbers}>
          {shownChance(chance)} · {responses}
        </span>
      ) : (
        changesIn !== null && <span className={styles.said}>{daysWord(words.changes, changesIn)}</span>
      )}
    </span>
  );
}

function signedWord({ signedFor }: BoardPerson, words: BoardWords): string {
  return signedFor === null ? words.notSigned : daysWord(words.signedFor, signedFor);
}
