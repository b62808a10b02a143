// What pages gain with script. Everything works without it.

// The first thing to read after a refusal is why.
document.getElementById('problem')?.focus();

// A button pressed twice sends once; the server would take it once anyway.
for (const form of document.forms) {
  form.addEventListener('submit', (event) => {
    if (form.dataset.sent) event.preventDefault();
    form.dataset.sent = 'yes';
  });
}
addEventListener('pageshow', () => {
  for (const form of document.forms) delete form.dataset.sent;
});
