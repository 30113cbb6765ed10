import { getTranslations } from 'next-intl/server';
import type { Session } from '@/app/_server/session';
import { ActForm } from './act-form';
import type { ActResult } from './act-result';
import { NewcomerFields } from './newcomer-fields';
import ui from './ui.module.css';

/** Joining an organisation: as the person signed in, or as somebody new. `carried` is what the link or the code was. */
export async function WayIn({
  session,
  action,
  carried,
  back,
  slug,
  email,
}: {
  session: Session | null;
  action: (form: FormData) => Promise<ActResult>;
  carried: { name: string; value: string };
  /** Where to come back to after signing in. */
  back: string;
  slug: string;
  email?: string | null;
}) {
  const t = await getTranslations('wayIn');
  const problems = await getTranslations('problems');
  const hidden = <input type="hidden" name={carried.name} value={carried.value} />;
  if (session)
    return (
      <ActForm
        className={ui.stack}
        action={action}
        submit={t('asSelf', { name: session.name })}
        failed={problems('no-answer')}
      >
        {hidden}
        <input type="hidden" name="as" value="self" />
        <p className={ui.small}>{t('notYou')}</p>
      </ActForm>
    );
  return (
    <>
      <p>
        {t('known')} <a href={`/sign-in?next=${encodeURIComponent(back)}`}>{t('signInFirst')}</a>
      </p>
      <ActForm className={ui.stack} action={action} submit={t('asNew')} failed={problems('no-answer')}>
        {hidden}
        <NewcomerFields slug={slug} email={email ?? null} />
      </ActForm>
    </>
  );
}
