import Link from 'next/link';
import { getTranslations } from 'next-intl/server';
import { database } from '@/app/_server/database';
import type { Desk } from '@/app/_server/permit';
import ui from '@/app/_ui/ui.module.css';
import { listCertificatesOf } from '@/db/queries/certificates';
import styles from '../learn.module.css';

/** The way to what somebody holds; nothing for whoever holds nothing. */
export async function HeldLink({ desk }: { desk: Desk }) {
  const held = await listCertificatesOf(database(), desk);
  if (held.length === 0) return null;
  const t = await getTranslations('learn');
  return (
    <p className={ui.panel}>
      <Link className={styles.way} href="/learn/certificates" prefetch={false}>
        {t('certificatesLink')}
      </Link>
    </p>
  );
}
