/** Which key presses a page may take for itself. */

/** True when the browser or a focused field has a better use for the key. */
export function belongsElsewhere(event: KeyboardEvent): boolean {
  if (event.defaultPrevented || event.ctrlKey || event.metaKey || event.altKey || event.isComposing)
    return true;
  const target = event.target instanceof Element ? event.target : null;
  if (!target) return false;
  if (target.closest('dialog[open]')) return true;
  if (target.matches('input:not([type="radio"], [type="checkbox"]), textarea, select')) return true;
  // Enter and the space bar work the button or link that has the focus.
  return (
    (event.key === 'Enter' || event.key === ' ') && target.matches('button, a, summary, [role="button"]')
  );
}
