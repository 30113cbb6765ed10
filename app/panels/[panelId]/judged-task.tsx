import { getTranslations } from 'next-intl/server';
import { faceOfCase } from '@/app/_server/attempt-view';
import { catalogue } from '@/app/_server/catalogue';
import { database } from '@/app/_server/database';
import { truthView } from '@/app/_server/debrief-view';
import { readDisplay } from '@/app/_server/display';
import { paperCase } from '@/app/_server/paper-case';
import { askedQuestion } from '@/app/_server/questions/asked-question';
import { markedView } from '@/app/_server/questions/marked-view';
import { MarkedQuestion } from '@/app/_ui/questions/marked-question';
import ui from '@/app/_ui/ui.module.css';
import { Truth } from '@/app/learn/cases/[attemptId]/debrief/truth';
import { WorkOrder } from '@/app/learn/cases/[attemptId]/work-order';
import { findPoolTasks } from '@/db/queries/pool-tasks';
import type { PanelTask } from '@/lib/readiness/panel';

/** A task as a judge has to know it: what is asked, and the right answer. */
export async function JudgedTask({ task }: { task: PanelTask }) {
  const t = await getTranslations('panels');
  const [stored] = await findPoolTasks(database(), [task.poolTaskId]);
  if (stored?.caseCode) return <JudgedCase code={stored.caseCode} />;
  if (!stored?.spec) return <p className={ui.notice}>{t('taskGone')}</p>;
  const { question, content } = await askedQuestion({
    spec: stored.spec,
    writtenVersionId: null,
    seed: stored.spec.seed,
  });
  const context = { content, catalogue: catalogue(), units: (await readDisplay()).units };
  return <MarkedQuestion marked={markedView(question, null, { credit: 0, score: 0, notes: [] }, context)} />;
}

async function JudgedCase({ code }: { code: string }) {
  const t = await getTranslations('panels');
  const conditions = await getTranslations('conditions');
  const { units } = await readDisplay();
  const { theCase, certificate } = paperCase(code);
  const { cause, severity, also } = theCase.truth;
  return (
    <div className={ui.stack}>
      <p className={ui.small}>{t('caseScale')}</p>
      <WorkOrder view={{ minutes: 0 }} face={faceOfCase(theCase)} units={units} heading="h3" />
      <Truth view={{ truths: [{ cause, severity }, ...(also ? [also] : [])].map(truthView) }} />
      <h3>{t('expertWay')}</h3>
      <ol className={ui.steps}>
        {certificate.route.steps.map(({ check, condition }) => (
          <li key={`${check} ${condition}`}>
            {catalogue().checks.get(check)?.text.en.name ?? check}, {conditions(condition)}
          </li>
        ))}
      </ol>
    </div>
  );
}
