import { useTranslations } from 'next-intl';
import { ActForm } from '@/app/_ui/act-form';
import ui from '@/app/_ui/ui.module.css';
import { startRandomCase } from './actions';
import { Coached } from './coached';
import { ANY, difficulties, type Level, levels } from './random-choices';

/** What a form offers to choose from. */
export interface Named {
  id: string;
  name: string;
}

/** The button that starts a case nobody has seen, of the kind that was just worked or on a topic. */
export function StartRandom({
  label,
  rig,
  level,
  topic,
}: {
  label: string;
  rig?: string | undefined;
  level?: Level;
  topic?: string;
}) {
  const t = useTranslations('problems');
  return (
    <ActForm action={startRandomCase} submit={label} failed={t('start-failed')}>
      <input type="hidden" name="rig" value={rig ?? ANY} />
      <input type="hidden" name="level" value={level ?? 'usual'} />
      <input type="hidden" name="topic" value={topic ?? ANY} />
    </ActForm>
  );
}

/** The same, with a choice of system, level, topic and difficulty. */
export function ChooseRandom({ rigs, topics }: { rigs: readonly Named[]; topics: readonly Named[] }) {
  const t = useTranslations('learn');
  const problems = useTranslations('problems');
  return (
    <ActForm className={ui.stack} action={startRandomCase} submit={t('random')} failed={problems('start-failed')}>
      <Choose name="rig" label={t('rig')} options={[{ id: ANY, name: t('anyRig') }, ...rigs]} />
      <Choose name="topic" label={t('topic')} options={[{ id: ANY, name: t('anyTopic') }, ...topics]} />
      <Choose name="level" label={t('level')} options={levels.map((id) => ({ id, name: t(`levels.${id}`) }))} />
      <Choose
        name="difficulty"
        label={t('difficulty')}
        options={difficulties.map((id) => ({ id, name: t(`difficulties.${id}`) }))}
      />
      <Coached id="coached-random" />
    </ActForm>
  );
}

/** A drop-down list. The first of it is chosen. */
function Choose({ name, label, options }: { name: string; label: string; options: readonly Named[] }) {
  return (
    <label className={ui.field}>
      <span>{label}</span>
      <select name={name} defaultValue={options[0]?.id}>
        {options.map((option) => (
          <option key={option.id} value={option.id}>
            {option.name}
          </option>
        ))}
      </select>
    </label>
  );
}
