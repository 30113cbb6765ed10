import { download } from '@/app/_server/guard';
import { readKeptPicture } from '@/app/_server/pictures/picture-files';

/** A picture as it is kept. What an id stands for never changes. */
export const GET = download(
  '/pictures/[pictureId]',
  async (_permit, _request, { pictureId }: { pictureId: string }): Promise<Response> => {
    const webp = await readKeptPicture(pictureId);
    if (!webp) return new Response('Not found', { status: 404, headers: { 'content-type': 'text/plain' } });
    return new Response(new Uint8Array(webp), {
      headers: {
        'Content-Type': 'image/webp',
        'X-Content-Type-Options': 'nosniff',
        'Content-Disposition': 'inline; filename="picture.webp"',
        'Cache-Control': 'private, max-age=31536000, immutable',
      },
    });
  },
);
