import { useTranslations } from 'next-intl';
import type { ReadItem } from '@/app/_server/gradebook/read-statistics';
import ui from '@/app/_ui/ui.module.css';
import type { ItemFlag } from '@/lib/statistics/item-flags';

/** One task: its figures, what was chosen, and what to look at again. */
export function ItemPanel({ item, parallel }: { item: ReadItem; parallel: boolean }) {
  const t = useTranslations('statistics');
  const { place, kind, statistics, flags, times, options, alphaWithout } = item;
  const figure = (value: number | undefined, show: (known: number) => string) =>
    value === undefined ? '–' : show(value);
  return (
    <section className={`${ui.panel} ${ui.stack}`} aria-labelledby={`item-${place}`}>
      <h2 id={`item-${place}`}>{t(`kinds.${kind}`, { place })}</h2>
      <dl className={ui.facts}>
        <dt>{t('answered')}</dt>
        <dd>{statistics.people}</dd>
        <dt>{t('difficulty')}</dt>
        <dd>{figure(statistics.difficulty.value, (share) => `${Math.round(100 * share)} %`)}</dd>
        <dt>{t('discrimination')}</dt>
        <dd>{figure(statistics.discrimination.value, (value) => value.toFixed(2).replace('-', '−'))}</dd>
        <dt>{t('time')}</dt>
        <dd>
          {times
            ? t('minutes', {
                low: (times.lowerQuartile / 60).toFixed(1),
                median: (times.median / 60).toFixed(1),
                high: (times.upperQuartile / 60).toFixed(1),
              })
            : '–'}
        </dd>
        <dt>{t('alphaWithout')}</dt>
        <dd>{figure(alphaWithout, (value) => value.toFixed(2).replace('-', '−'))}</dd>
      </dl>
      {flags.length > 0 && (
        <ul>
          {flags.map((flag) => (
            <li key={`${flag.code} ${'option' in flag ? flag.option : ''}`}>
              <Flag flag={flag} nameOf={item.nameOf} />
            </li>
          ))}
        </ul>
      )}
      {options.length > 0 && (
        <details>
          <summary>{t(kind === 'case' ? 'namedCauses' : 'chosen')}</summary>
          {parallel && <p className={ui.small}>{t('parallel')}</p>}
          <ul>
            {options.map(({ option, count, right, elsewhere }) => (
              <li key={option}>
                {t(right ? 'optionRight' : 'option', { option: item.nameOf[option] ?? option, count })}
                {elsewhere !== undefined && ` ${t('elsewhere', { share: Math.round(100 * elsewhere) })}`}
              </li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}

/** What a flag means, for somebody who never heard of correlations. */
function Flag({ flag, nameOf }: { flag: ItemFlag; nameOf: Readonly<Record<string, string>> }) {
  const t = useTranslations('statistics.flags');
  const unsure = 'beyondChance' in flag && !flag.beyondChance ? ` ${t('maybe')}` : '';
  const option = 'option' in flag ? (nameOf[flag.option] ?? flag.option) : '';
  const numbers = Object.fromEntries(Object.entries(flag).filter(([, value]) => typeof value === 'number'));
  return `${t(flag.code, { ...numbers, option })}${unsure}`;
}
