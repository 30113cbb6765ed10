import { useTranslations } from 'next-intl';
import ui from './ui.module.css';

type CautionWords = ReturnType<typeof useTranslations<'cautions'>>;

/** The cautions of one check, each in a sentence. */
export function Cautions({ title, ids }: { title: string; ids: readonly string[] }) {
  const t = useTranslations('cautions');
  const known = ids.filter((id) => t.has(id as Parameters<CautionWords>[0]));
  if (known.length === 0) return null;
  return (
    <div className={ui.caution}>
      <b>{title}</b>
      <ul>
        {known.map((id) => (
          <li key={id}>{t(id as Parameters<CautionWords>[0])}</li>
        ))}
      </ul>
    </div>
  );
}
