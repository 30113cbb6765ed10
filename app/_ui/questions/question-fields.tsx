import { plainText } from '@/app/_server/questions/plain-text';
import type { QuestionView } from '@/app/_server/questions/question-view';
import { Cautions } from '@/app/_ui/cautions';
import type { Answer } from '@/lib/questions/answer';

/**
 * What is asked and the fields to answer it, to stand in a form. Rendered on the server; a form for another question needs
 * another `key`, or what was chosen for this one stays.
 */
export function QuestionFields({ view, given }: { view: QuestionView; given?: Answer | undefined }) {
  return (
    <>
      {view.stem.map((said) => (
        <p key={plainText(said)}>{plainText(said)}</p>
      ))}
      <Cautions title="" ids={view.cautions} />
      {view.answer.form === 'choice' &&
        view.answer.options.map(({ id, said }) => (
          <label key={id}>
            <input
              type="radio"
              name="option"
              value={id}
              defaultChecked={given?.form === 'choice' && given.option === id}
            />
            {plainText(said)}
          </label>
        ))}
    </>
  );
}
