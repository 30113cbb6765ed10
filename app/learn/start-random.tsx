import { useTranslations } from 'next-intl';
import { ActForm } from '@/app/_ui/act-form';
import ui from '@/app/_ui/ui.module.css';
import { startRandomCase } from './actions';
import { ANY_RIG, type Level, levels } from './random-choices';

/** The button that starts a case nobody has seen, of the kind that was just worked. */
export function StartRandom({ label, rig, level }: { label: string; rig?: string | undefined; level?: Level }) {
  const t = useTranslations('problems');
  return (
    <ActForm action={startRandomCase} submit={label} failed={t('start-failed')}>
      <input type="hidden" name="rig" value={rig ?? ANY_RIG} />
      <input type="hidden" name="level" value={level ?? 'usual'} />
    </ActForm>
  );
}

/** The same, with a choice of system and level. */
export function ChooseRandom({ rigs }: { rigs: readonly { id: string; name: string }[] }) {
  const t = useTranslations('learn');
  const problems = useTranslations('problems');
  return (
    <ActForm className={ui.stack} action={startRandomCase} submit={t('random')} failed={problems('start-failed')}>
      <label className={ui.field}>
        <span>{t('rig')}</span>
        <select name="rig" defaultValue={ANY_RIG}>
          <option value={ANY_RIG}>{t('anyRig')}</option>
          {rigs.map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </select>
      </label>
      <label className={ui.field}>
        <span>{t('level')}</span>
        <select name="level" defaultValue="usual">
          {levels.map((level) => (
            <option key={level} value={level}>
              {t(`levels.${level}`)}
            </option>
          ))}
        </select>
      </label>
    </ActForm>
  );
}
