// Asks the browser for a passkey and sends its answer with the form of the page.
"use strict";

(() => {
  const works =
    window.PublicKeyCredential &&
    PublicKeyCredential.parseCreationOptionsFromJSON &&
    PublicKeyCredential.parseRequestOptionsFromJSON;
  const fault = document.getElementById("passkey-fault");

  const tell = (words) => {
    if (fault) {
      fault.textContent = words;
      fault.hidden = false;
    }
  };

  const question = async (form, address) => {
    const csrf = form.querySelector("input[name=_csrf]");
    const answer = await fetch(address, {
      method: "POST",
      body: new URLSearchParams({ _csrf: csrf.value }),
    });
    if (!answer.ok) {
      throw new Error("refused");
    }
    return answer.json();
  };

  const answered = async (form, field, ask) => {
    try {
      const key = await ask();
      form.elements[field].value = JSON.stringify(key.toJSON());
      form.submit();
    } catch (problem) {
      tell("The passkey was not used. Try once more, or use another way.");
    }
  };

  document.querySelectorAll("[data-passkey=new]").forEach((form) => {
    form.hidden = !works;
    form.addEventListener("submit", (event) => {
      event.preventDefault();
      answered(form, "answer", async () =>
        navigator.credentials.create({
          publicKey: PublicKeyCredential.parseCreationOptionsFromJSON(
            await question(form, form.dataset.questions),
          ),
        }),
      );
    });
  });

  document.querySelectorAll("[data-passkey=use]").forEach((button) => {
    const form = document.getElementById(button.dataset.form);
    button.hidden = !works;
    button.addEventListener("click", () =>
      answered(form, "passkeyAnswer", async () =>
        navigator.credentials.get({
          publicKey: PublicKeyCredential.parseRequestOptionsFromJSON(
            await question(form, button.dataset.questions),
          ),
        }),
      ),
    );
  });
})();
