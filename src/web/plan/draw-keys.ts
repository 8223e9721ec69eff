/**
 * Sends the keyboard from the plan to the field for the length of the chosen side when a figure is pressed.
 *
 * @returns Whether the field has the keyboard now; the figure replaces what stands there.
 */
export function sideKey(event: KeyboardEvent): boolean {
  if (event.ctrlKey || event.metaKey || event.altKey || !/^[0-9.,]$/.test(event.key)) return false;
  const field = document.querySelector<HTMLInputElement>("[data-side-length] input");
  field?.focus();
  field?.select();
  return field !== null;
}

/**
 * Sends the keyboard from the plan to the field for typed lengths when a figure, an arrow or the keys of a chain are pressed.
 *
 * @returns Whether the field has the keyboard now; the key itself still arrives there.
 */
export function drawKey(event: KeyboardEvent): boolean {
  if (event.ctrlKey || event.metaKey || event.altKey) return false;
  if (!/^([0-9.,]|Arrow(Left|Right|Up|Down)|Backspace|Enter)$/.test(event.key)) return false;
  const field = document.querySelector<HTMLInputElement>("[data-draw-length]");
  if (!field) return false;
  field.focus();
  // A figure is typed by the browser itself, now that the field has the keyboard; other keys are handed on.
  if (event.key.length > 1) {
    event.preventDefault();
    field.dispatchEvent(new KeyboardEvent("keydown", { key: event.key, bubbles: true, cancelable: true }));
  }
  return true;
}
