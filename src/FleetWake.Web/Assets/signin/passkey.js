// Passkeys on the pages where one signs in, follows a link, or keeps one's ways in. Without them (or without script) the
// page's form with a password is all there is, and all that is needed.
const place = document.querySelector("[data-passkey]");

// A passkey belongs to a name: reached by a bare address such as 127.0.0.1 there is none to have.
const named = !/^[\d.]+$|:/.test(location.hostname);
if (place && named && window.PublicKeyCredential && navigator.credentials) {
  place.hidden = false;
  place.querySelector("[data-use]")?.addEventListener("click", e => run(e.currentTarget, () => navigator.credentials.get.bind(navigator.credentials), readRequest));
  place.querySelector("[data-make]")?.addEventListener("click", e => run(e.currentTarget, () => navigator.credentials.create.bind(navigator.credentials), readCreation));
}

async function run(button, way, read) {
  const wrong = place.querySelector("[data-wrong]");
  wrong.textContent = "";
  button.disabled = true;
  try {
    const asked = await send(place.dataset.passkey + "/asked", {});
    const credential = await way()({ publicKey: read(asked) });
    const answer = await send(place.dataset.passkey, {
      credential: written(credential),
      name: place.querySelector("[data-called]")?.value ?? null,
      to: place.dataset.to ?? null,
    });
    location.assign(answer.to);
  } catch (error) {
    // The browser's own errors say nothing to a person: she changed her mind, or the device has no such key.
    wrong.textContent = error instanceof Told ? error.message : place.querySelector("[data-said-gone]").textContent;
    button.disabled = false;
    button.focus();
  }
}

class Told extends Error {}

async function send(path, body) {
  const response = await fetch(path, {
    method: "POST",
    headers: { "Content-Type": "application/json", "FleetWake-Form-Token": document.querySelector("input[name=form-token]").value },
    body: JSON.stringify(body),
  });
  if (response.ok) return response.json();
  const problem = await response.json().catch(() => null);
  throw problem?.detail ? new Told(problem.detail) : new Error(response.statusText);
}

// Written out for phones whose browsers do not read and write these forms by themselves.
function readRequest(asked) {
  if (PublicKeyCredential.parseRequestOptionsFromJSON) return PublicKeyCredential.parseRequestOptionsFromJSON(asked);
  return { ...asked, challenge: bytes(asked.challenge), allowCredentials: asked.allowCredentials?.map(c => ({ ...c, id: bytes(c.id) })) };
}

function readCreation(asked) {
  if (PublicKeyCredential.parseCreationOptionsFromJSON) return PublicKeyCredential.parseCreationOptionsFromJSON(asked);
  return {
    ...asked,
    challenge: bytes(asked.challenge),
    user: { ...asked.user, id: bytes(asked.user.id) },
    excludeCredentials: asked.excludeCredentials?.map(c => ({ ...c, id: bytes(c.id) })),
  };
}

function written(credential) {
  if (credential.toJSON) return credential.toJSON();
  const response = { clientDataJSON: text(credential.response.clientDataJSON) };
  for (const part of ["attestationObject", "authenticatorData", "signature", "userHandle"])
    if (credential.response[part]) response[part] = text(credential.response[part]);
  if (credential.response.getTransports) response.transports = credential.response.getTransports();
  return {
    id: credential.id, rawId: text(credential.rawId), type: credential.type, response,
    clientExtensionResults: credential.getClientExtensionResults(),
    authenticatorAttachment: credential.authenticatorAttachment ?? undefined,
  };
}

function bytes(words) {
  const plain = atob(words.replaceAll("-", "+").replaceAll("_", "/"));
  return Uint8Array.from(plain, c => c.charCodeAt(0)).buffer;
}

function text(buffer) {
  return btoa(String.fromCharCode(...new Uint8Array(buffer))).replaceAll("+", "-").replaceAll("/", "_").replaceAll("=", "");
}
