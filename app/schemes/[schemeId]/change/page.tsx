import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { getTranslations } from 'next-intl/server';
import { database } from '@/app/_server/database';
import { page } from '@/app/_server/guard';
import { organizationOf } from '@/app/_server/permit';
import { findScheme } from '@/app/_server/schemes';
import lines from '@/app/_ui/lines.module.css';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { FieldForm } from '@/app/assignments/field-form';
import { FieldGroup } from '@/app/assignments/form-fields';
import { changeScheme } from '../../actions';
import { BlueprintFields } from './blueprint-fields';
import { RuleFields } from './rule-fields';
import { WordFields } from './word-fields';
import { WrongArea } from './wrong-area';

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('schemes');
  return { title: t('change') };
}

/** The rules of a certificate to be changed: what is kept is another version. */
export default page(
  '/schemes/[schemeId]/change',
  async (permit, { params }: PageProps<'/schemes/[schemeId]/change'>) => {
    const { schemeId } = await params;
    const scheme = await findScheme(database(), organizationOf(permit), schemeId);
    if (!scheme) notFound();
    const t = await getTranslations('schemes');
    const problems = await getTranslations('problems');
    return (
      <>
        <SiteHeader note={t('version', { number: scheme.version })} />
        <main id="main" className={`${ui.page} ${ui.narrow}`}>
          <h1>{t('changeOne', { name: scheme.text.en.name })}</h1>
          <p className={ui.prose}>{t('changeBody')}</p>
          <FieldForm
            action={changeScheme}
            submit={t('keep', { number: scheme.version + 1 })}
            failed={problems('no-answer')}
            wrongTitle={problems('scheme-wrong')}
          >
            <input type="hidden" name="schemeId" value={schemeId} />
            <input type="hidden" name="basedOn" value={scheme.version} />
            <FieldGroup legend={t('form.what')}>
              <WrongArea label={t('form.note')} rule={t('form.noteRule')} name="note" rows={3} />
            </FieldGroup>
            <WordFields scheme={scheme} />
            <BlueprintFields scheme={scheme} />
            <RuleFields scheme={scheme} />
          </FieldForm>
          <p>
            <Link className={lines.way} href={`/schemes/${schemeId}`} prefetch={false}>
              {t('backToOne')}
            </Link>
          </p>
        </main>
      </>
    );
  },
);
