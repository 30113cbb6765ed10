import { loadCatalogue } from '@/content/load';
import type { Catalogue } from '@/lib/catalogue';

let loaded: Catalogue | undefined;

/** All content, read and validated once. It does not change while the server runs. */
export function catalogue(): Catalogue {
  loaded ??= loadCatalogue();
  return loaded;
}
