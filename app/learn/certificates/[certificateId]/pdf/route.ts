import { notFound } from 'next/navigation';
import { certificatePdf } from '@/app/_server/certificates/certificate-pdf';
import { readOnRecord } from '@/app/_server/certificates/read-standing';
import { download } from '@/app/_server/guard';

type Named = Record<'certificateId', string>;

/** The certificate on paper. */
export const GET = download('/learn/certificates/[certificateId]/pdf', async (_, __, { certificateId }: Named) => {
  const record = await readOnRecord(certificateId);
  if (!record) notFound();
  const headers = {
    'content-type': 'application/pdf',
    'content-disposition': `attachment; filename="certificate-${certificateId}.pdf"`,
    'cache-control': 'private, no-store',
  };
  return new Response(new Uint8Array(await certificatePdf(record)), { headers });
});
