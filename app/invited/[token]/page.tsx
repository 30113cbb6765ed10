import type { Metadata } from 'next';
import { getTranslations } from 'next-intl/server';
import { readInvitation } from '@/app/_server/entering/read-invitation';
import { page } from '@/app/_server/guard';
import { SiteHeader } from '@/app/_ui/site-header';
import ui from '@/app/_ui/ui.module.css';
import { WayIn } from '@/app/_ui/way-in';
import { parseRoles } from '@/lib/accounts/roles';
import { acceptInvitation } from './actions';

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('invited');
  return { title: t('title'), referrer: 'no-referrer' };
}

/** What a link lets in to. A link that was used, withdrawn or never made says the same. */
export default page('/invited/[token]', async ({ session }, { params }: PageProps<'/invited/[token]'>) => {
  const { token } = await params;
  const invitation = await readInvitation(token);
  const t = await getTranslations('invited');
  const roles = await getTranslations('roles');
  return (
    <>
      <SiteHeader />
      <main id="main" className={`${ui.page} ${ui.narrow}`}>
        <section className={`${ui.panel} ${ui.ticket} ${ui.stack}`}>
          {invitation ? (
            <>
              <h1>{t('to', { organization: invitation.organizationName })}</h1>
              <p>
                {t('as', {
                  roles: parseRoles(invitation.role)
                    .map((role) => roles(role))
                    .join(', '),
                })}
              </p>
              <WayIn
                session={session}
                action={acceptInvitation}
                carried={{ name: 'token', value: token }}
                back={`/invited/${token}`}
                slug={invitation.slug}
                email={invitation.email}
              />
            </>
          ) : (
            <>
              <h1>{t('dead')}</h1>
              <p>{t('deadBody')}</p>
            </>
          )}
        </section>
      </main>
    </>
  );
});
