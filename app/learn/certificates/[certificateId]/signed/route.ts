import { database } from '@/app/_server/database';
import { download } from '@/app/_server/guard';
import { findCertificate } from '@/db/queries/certificates';

type Named = Record<'certificateId', string>;

/** The signed certificate as a file. */
export const GET = download('/learn/certificates/[certificateId]/signed', async (_, __, { certificateId }: Named) => {
  const row = await findCertificate(database(), certificateId);
  const headers = {
    'content-type': 'application/vc+jwt',
    'content-disposition': `attachment; filename="certificate-${certificateId}.jwt"`,
    'cache-control': 'private, no-store',
  };
  return new Response(row?.jwt ?? '', { headers });
});
