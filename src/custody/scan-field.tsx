/** The place a scanner types into: it has the focus as the page opens, and a scanner's Enter sends the form. */
export function ScanField({ value }: { value?: string | undefined }) {
  return (
    <div class="field scan">
      <label for="tag">Tag</label>
      <p class="hint" id="tag-hint">
        Scan it, or type it as it is on the item.
      </p>
      <input
        id="tag"
        name="tag"
        value={value ?? ''}
        required
        autofocus
        autocomplete="off"
        autocapitalize="characters"
        spellcheck={false}
        enterkeyhint="send"
        aria-describedby="tag-hint"
      />
    </div>
  );
}
