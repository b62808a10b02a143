import { render } from 'preact';
import { App } from './app.js';
import { Phone } from './phone.js';
import { keepSending } from './schedule.js';

const content = document.getElementById('content');
const offline = document.getElementById('offline');

if (content) {
  try {
    const phone = await Phone.open(() => {
      content.textContent =
        'This page is new. Close every other tab of it on this phone, and it opens; what was saved is kept.';
    });
    const send = keepSending(phone);
    content.replaceChildren();
    render(<App phone={phone} send={send} />, content);
    if (phone.hasWaiting) void send();
  } catch (error) {
    content.textContent = `This browser cannot keep checks (${String(error)}). Leave private browsing or use another browser.`;
  }
}

if (!('serviceWorker' in navigator) && offline) {
  offline.textContent = 'This page does not open without a signal here: it needs a secure address (https).';
} else {
  await navigator.serviceWorker.register('/phone/sw.js', { scope: '/phone' });
}
