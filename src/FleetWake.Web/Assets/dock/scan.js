// Reads a tag with the camera, where the browser can. Everywhere else the phone's own camera opens the tag's link.

import { h } from './dom.js';
import { go } from './router.js';
import { t } from './texts.js';

/** Whether this phone reads QR codes in a page. */
export async function canScan() {
  try {
    const Detector = /** @type {any} */ (globalThis).BarcodeDetector;
    return !!Detector && !!navigator.mediaDevices && (await Detector.getSupportedFormats()).includes('qr_code');
  } catch { return false; }
}

/** Opens the camera below an element until a tag of ours is seen. @param {Element} under */
export async function scan(under) {
  const video = h('video', { playsinline: true, muted: true });
  const words = h('p', { role: 'status' }, t('dock-boats.scanning'));
  let stream = /** @type {MediaStream | null} */ (null);
  let over = false;
  const stop = () => { over = true; stream?.getTracks().forEach(track => track.stop()); box.remove(); };
  const box = h('div.scan.sheet', null, video, words, h('button.plain', { type: 'button', onclick: stop }, t('dock-boats.scan_stop')));
  under.after(box);
  try {
    stream = await navigator.mediaDevices.getUserMedia({ video: { facingMode: 'environment' } });
    video.srcObject = stream;
    await video.play();
    const detector = new (/** @type {any} */ (globalThis).BarcodeDetector)({ formats: ['qr_code'] });
    while (!over && box.isConnected) {
      for (const code of await detector.detect(video)) {
        const path = pathOf(code.rawValue);
        if (path) { stop(); go(path); return; }
        words.textContent = t('dock-boats.scan_other');
      }
      await new Promise(r => setTimeout(r, 150));
    }
    stop();
  } catch {
    words.textContent = t('dock-boats.scan_no_camera');
  }
}

/** The page of a tag; null when it is none of ours. @param {string} text */
export function pathOf(text) {
  try {
    const url = new URL(text, location.origin);
    return /^\/dock\/[bep]\/[^/]+$/.test(url.pathname) ? url.pathname : null;
  } catch { return null; }
}
