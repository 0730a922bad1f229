import type { ComponentChildren } from 'preact';

/** A label, its control and the remark beside it. */
export function Field({ name, label, error, hint, children, group }: {
  name: string; label: string; error?: string | undefined; hint?: ComponentChildren; children: ComponentChildren; group?: boolean;
}) {
  const inner = <>
    {group ? <legend class="label">{label}</legend> : <label class="label" for={'f-' + name}>{label}</label>}
    {children}
    {hint && <div class="hint">{hint}</div>}
    <Remark name={name} text={error} />
  </>;
  return group ? <fieldset class={`field ${error ? 'wrong' : ''}`}>{inner}</fieldset> : <div class={`field ${error ? 'wrong' : ''}`}>{inner}</div>;
}

export function Remark({ name, text }: { name: string; text: string | undefined }) {
  return text ? <p class="remark" id={'r-' + name} data-testid={'error-' + name}><span aria-hidden="true">{'\u25b2'} </span>{text}</p> : null;
}

/** What was said of fields that the form does not show, and of the whole. */
export function OtherRemarks({ errors, shown }: { errors: Record<string, string>; shown: string[] }) {
  return <>{Object.entries(errors).filter(([k]) => !shown.includes(k)).map(([k, text]) => <Remark key={k} name={k || 'form'} text={text} />)}</>;
}

/** What ties a control to its label and remark. */
export const tie = (name: string, error?: string | undefined) => ({
  id: 'f-' + name, 'data-testid': 'field-' + name, 'aria-invalid': error ? true : undefined, 'aria-describedby': error ? 'r-' + name : undefined,
} as const);
