// Draws the questions, and makes a file of the answers. It asks nothing of any network.
      'use strict';
      const { token, name, questions } = JSON.parse(document.getElementById('data').textContent);
      document.getElementById('for').textContent = name;
      const form = document.getElementById('form');
      const add = (parent, kind, props = {}) => parent.appendChild(Object.assign(document.createElement(kind), props));
      let group = '';
      for (const q of questions) {
        if (q.group !== group) add(form, 'h2', { textContent: (group = q.group) });
        if (q.options) {
          const set = add(form, 'fieldset');
          add(set, 'legend', { textContent: q.label });
          for (const [value, words] of q.options) {
            const label = add(set, 'label');
            add(label, 'input', { type: 'radio', name: q.field, value });
            label.append(words);
          }
          continue;
        }
        const label = add(form, 'label', { htmlFor: q.field, textContent: q.label });
        if (q.hint) add(label, 'small', { textContent: q.hint });
        const field = add(form, q.long ? 'textarea' : 'input', { id: q.field, name: q.field, maxLength: q.most });
        if (!q.long) field.type = 'text';
      }
      add(form, 'button', { type: 'submit', textContent: 'Make the file' });
      form.addEventListener('submit', (event) => {
        event.preventDefault();
        const answers = {};
        for (const [field, value] of new FormData(form)) if (value.trim() !== '') answers[field] = value.trim();
        const text = JSON.stringify({ carryover_intake: 1, token, answers }, null, 1);
        const link = document.createElement('a');
        link.href = URL.createObjectURL(new Blob([text], { type: 'application/json' }));
        link.download = 'answers.json';
        link.click();
        const many = Object.keys(answers).length;
        document.getElementById('said').textContent =
          many === 0 ? 'Nothing is filled in yet.' : 'The file “answers.json” is made. Send it to your coach as you like.';
      });
