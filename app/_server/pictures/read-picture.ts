import sharp from 'sharp';

/** A picture made anew from one that somebody sent. */
export interface MadePicture {
  webp: Buffer;
  width: number;
  height: number;
}

/** Why nothing was made; a code of `problems`. */
export type PictureProblem = 'picture-kind' | 'picture-moves' | 'picture-large' | 'picture-broken';

/** Longest side of what is kept. */
const MOST_PIXELS_A_SIDE = 1600;
const MOST_PIXELS = 40_000_000;
const MOST_SECONDS = 20;

// Whatever else the library can read, a file that calls itself a picture must not reach it.
sharp.block({ operation: ['VipsForeignLoad'] });
sharp.unblock({
  operation: ['VipsForeignLoadPngBuffer', 'VipsForeignLoadJpegBuffer', 'VipsForeignLoadWebpBuffer'],
});

/**
 * Draws a picture anew, so that nothing of the file that was sent is kept: neither where it was taken nor what else was in it.
 *
 * @param bytes  As they were sent. What they are called does not count.
 */
export async function readPicture(bytes: Uint8Array): Promise<MadePicture | PictureProblem> {
  const kind = kindOf(bytes);
  if (!kind) return 'picture-kind';
  const picture = sharp(bytes, { limitInputPixels: false, pages: -1, failOn: 'warning' });
  const found = await picture.metadata().catch(() => undefined);
  if (!found || found.format !== kind) return 'picture-broken';
  if ((found.pages ?? 1) > 1) return 'picture-moves';
  if (found.width * found.height > MOST_PIXELS) return 'picture-large';
  return make(bytes, kind);
}

async function make(bytes: Uint8Array, kind: Kind): Promise<MadePicture | PictureProblem> {
  const within = {
    width: MOST_PIXELS_A_SIDE,
    height: MOST_PIXELS_A_SIDE,
    fit: 'inside',
    withoutEnlargement: true,
  } as const;
  try {
    const { data, info } = await sharp(bytes, { limitInputPixels: MOST_PIXELS, failOn: 'warning' })
      .timeout({ seconds: MOST_SECONDS })
      .autoOrient()
      .resize(within)
      // Lines of a drawing stay sharp.
      .webp(kind === 'jpeg' ? { quality: 82 } : { quality: 90, nearLossless: true })
      .toBuffer({ resolveWithObject: true });
    return { webp: data, width: info.width, height: info.height };
  } catch {
    return 'picture-broken';
  }
}

type Kind = 'png' | 'jpeg' | 'webp';

/** By how such files begin. @source PNG (W3C, third edition) 5.2; JPEG (ITU-T T.81) B.1.1.3; WebP (RFC 9649) 2.4, from memory. */
function kindOf(bytes: Uint8Array): Kind | undefined {
  const head = Buffer.from(bytes.buffer, bytes.byteOffset, Math.min(bytes.byteLength, 12)).toString('latin1');
  if (head.startsWith('\x89PNG\r\n\x1a\n')) return 'png';
  if (head.startsWith('\xff\xd8\xff')) return 'jpeg';
  return head.startsWith('RIFF') && head.endsWith('WEBP') ? 'webp' : undefined;
}
