// Takes the next step of an import by itself. Without script, the button does.
const form = document.getElementById("go-on");
if (form) setTimeout(() => form.requestSubmit(), 300);
