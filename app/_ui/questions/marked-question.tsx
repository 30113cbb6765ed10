import type { MarkedView } from '@/app/_server/questions/marked-view';
import { plainText } from '@/app/_server/questions/plain-text';

/** A question after its mark: first how it stands, then answer and key, what there is to say of it, and how the key comes about. */
export function MarkedQuestion({ marked }: { marked: MarkedView }) {
  return (
    <>
      <p>{marked.outcome.is}</p>
      {[...marked.notes, ...marked.explanation].map((said) => (
        <p key={plainText(said)}>{plainText(said)}</p>
      ))}
    </>
  );
}
