/** Fields for the figures of a practice cylinder: what is measured once, the key, the chambers. Enter goes on to the next. */
import {
  type FigureName,
  figureNames,
  figureParts,
  figureRange,
  type PracticeCard,
} from '../../model/learning/practice-figures.ts';
import { TypedLength } from './typed-length.tsx';
import { useWords } from './words-context.ts';
import type { Words } from './words/words.ts';

type FigureFieldsProps = {
  readonly card: Pick<PracticeCard, 'unit' | 'chambers'>;
  readonly typed: Readonly<Record<string, string>>;
  readonly isReadOnly?: boolean;
  readonly onType: (name: FigureName, text: string) => void;
};

export function FigureFields({ card, typed, isReadOnly = false, onType }: FigureFieldsProps) {
  const { practice } = useWords();
  const names = figureNames(card.chambers);
  const groups = [
    [practice.once, names.filter((name) => figureParts(name).number === null)],
    [practice.key, names.filter((name) => figureParts(name).kind === 'root')],
    [practice.stacks, names.filter((name) => figureParts(name).kind === 'pin')],
  ] as const;
  return (
    <div className="practice-fields">
      {groups.map(([title, group]) => (
        <fieldset key={title} className="practice-group">
          <legend>{title}</legend>
          {group.map((name) => (
            <TypedLength
              key={name}
              label={figureLabel(name, practice.figures)}
              text={typed[name] ?? ''}
              unit={card.unit}
              range={figureRange(name)}
              isReadOnly={isReadOnly}
              onText={(text) => onType(name, text)}
              onEnter={(event) => {
                event.preventDefault();
                const all = [
                  ...(event.currentTarget.closest('.practice-fields')?.querySelectorAll('input') ?? []),
                ];
                all[all.indexOf(event.currentTarget) + 1]?.focus();
              }}
            />
          ))}
        </fieldset>
      ))}
    </div>
  );
}

export function figureLabel(name: FigureName, words: Words['practice']['figures']): string {
  const { kind, number } = figureParts(name);
  return words[kind].replace('{number}', String(number));
}
