;;; sayline-mode.el --- Scripts that are spoken to a camera -*- lexical-binding: t -*-

;; Version: 0.1.0
;; Package-Requires: ((emacs "28.1"))
;; Keywords: wp, languages

;;; Commentary:

;; Colours and outline for .say files, and the server through Eglot, which Emacs carries from 29 on
;; and GNU ELPA has for 28.  Shapes only: what needs a word list is left to the server's findings.
;; `sayline-ts-mode' takes its colours from the tree-sitter grammar instead, where Emacs can.

;;; Code:

(require 'outline)
(require 'seq)

(defgroup sayline nil
  "Scripts that are spoken to a camera."
  :group 'text)

(defcustom sayline-program "sayline"
  "The program: a name on the path, or a file."
  :type 'string)

;;; Faces

(defface sayline-heading '((t :inherit bold)) "The name of a section and its target.")
(defface sayline-header '((t :inherit shadow)) "The lines around the header.")
(defface sayline-key '((t :inherit font-lock-variable-name-face)) "A key of the header.")
(defface sayline-value '((t :inherit font-lock-string-face)) "A value of the header.")
(defface sayline-speaker '((t :inherit font-lock-type-face)) "Who says the thought.")
(defface sayline-note '((t :inherit font-lock-comment-face)) "A line for the writer alone.")
(defface sayline-direction '((t :inherit font-lock-preprocessor-face)) "What to do, not to say.")
(defface sayline-mark '((t :inherit font-lock-keyword-face)) "A mark of delivery.")
(defface sayline-escape '((t :inherit font-lock-escape-face)) "What would be a mark, as text.")
(defface sayline-raw '((t :inherit font-lock-string-face)) "Words in which nothing is a mark.")
(defface sayline-link '((t :inherit link)) "A web address.")
(defface sayline-stress '((t :inherit italic)) "Words that are leaned on.")
(defface sayline-heavy '((t :inherit bold)) "Words that are landed on.")
(defface sayline-soft '((t :inherit shadow)) "Words that are played down.")
(defface sayline-quick '((t :inherit font-lock-variable-name-face)) "Words said faster.")
(defface sayline-slow '((t :inherit font-lock-function-name-face)) "Words said slower.")
(defface sayline-quoted '((t :inherit font-lock-string-face)) "Words in another voice.")

;; Emacs 28 has no face for escapes.
(unless (facep 'font-lock-escape-face)
  (set-face-attribute 'sayline-escape nil :inherit 'font-lock-constant-face))

;;; The header

(defun sayline--header-end ()
  "The end of the header's last line, or nil where the script has no header."
  (save-excursion
    (save-restriction
      (widen)
      (goto-char (point-min))
      (when (looking-at "\ufeff?---[ \t]*$")
        (forward-line)
        (while (and (not (eobp)) (looking-at "[ \t]*[[:alpha:]][[:alnum:]_ -]*:"))
          (forward-line))
        (if (looking-at "---[ \t]*$") (line-end-position) (max (point-min) (1- (point))))))))

(defun sayline--in-header (regexp)
  "A font-lock matcher of REGEXP within the header."
  (lambda (limit)
    (let ((end (sayline--header-end)))
      (and end (< (point) end)
           (re-search-forward regexp (min limit end) t)))))

(defun sayline--below-header (regexp)
  "A font-lock matcher of REGEXP below the header."
  (lambda (limit)
    (let ((end (sayline--header-end)))
      (when (and end (< (point) end)) (goto-char (min end limit)))
      (re-search-forward regexp limit t))))

(defun sayline--whole-header ()
  "Let font-lock look at the header as a whole: one line may end it for all below."
  (defvar font-lock-beg)
  (defvar font-lock-end)
  (let ((end (sayline--header-end)))
    (when (and end (<= font-lock-beg end)
               (or (> font-lock-beg (point-min)) (< font-lock-end end)))
      (setq font-lock-beg (point-min)
            font-lock-end (max font-lock-end end))
      t)))

;;; Marks

(defconst sayline--sealed
  '(sayline-escape sayline-raw sayline-link sayline-direction sayline-note sayline-heading
    sayline-header sayline-key sayline-value sayline-mark)
  "Faces within which nothing opens or closes a pair.")

(defun sayline--free-p (position)
  "Whether a pair may open or close at POSITION."
  (let ((face (get-text-property position 'face)))
    (not (seq-intersection (if (listp face) face (list face)) sayline--sealed))))

(defun sayline--pair (open close &optional inside)
  "A font-lock matcher of a pair: OPEN, words, CLOSE.
OPEN and CLOSE are regexps of one group each; the words have nothing of INSIDE.
They stand on one line, with no blank next to the marks."
  (let* ((outside (or inside ""))
         (word (concat "[^ \t\n" outside "]"))
         (regexp (concat open
                         "\\(" word "\\(?:[^\n" outside "]*?" word "\\)??\\)"
                         close)))
    (lambda (limit)
      (let (found)
        (while (and (not found) (re-search-forward regexp limit t))
          (if (and (sayline--free-p (match-beginning 1)) (sayline--free-p (match-beginning 3)))
              (setq found t)
            (goto-char (1+ (match-beginning 1)))))
        ;; What closes one pair may stand right before what opens the next.
        (when found (goto-char (match-end 3)))
        found))))

(defun sayline--mark (regexp before)
  "A font-lock matcher of REGEXP's first group, where BEFORE stands before it."
  (lambda (limit)
    (let (found)
      (while (and (not found) (re-search-forward regexp limit t))
        (goto-char (match-beginning 1))
        (setq found (save-match-data (looking-back before (line-beginning-position))))
        (goto-char (if found (match-end 1) (1+ (match-beginning 1)))))
      found)))

(defconst sayline--opens "\\(?:^\\|[][ \t\"“(*_<>~°]\\)"
  "What may stand before the mark that opens a pair.")

(defconst sayline--keywords
  (let* ((opens sayline--opens)
         (ends "\\(?:[^[:alnum:]_]\\|$\\)")
         (mark ''sayline-mark)
         (pair (lambda (matcher face)
                 `(,matcher (1 ,mark prepend) (2 ',face append) (3 ,mark prepend)))))
    `((,(sayline--in-header "^\ufeff?\\(---\\)[ \t]*$") (1 'sayline-header))
      (,(sayline--in-header
         "^[ \t]*\\([[:alpha:]][[:alnum:]_ -]*?\\)[ \t]*:[ \t]*\\(.*?\\)[ \t]*$")
       (1 'sayline-key) (2 'sayline-value))
      (,(sayline--below-header "^[ \t]*\\(---\\)[ \t]*$") (1 ,mark))
      (,(sayline--below-header "^[ \t]*\\(#\\{1,3\\}[ \t]+.*\\)$") (1 'sayline-heading))
      (,(sayline--below-header "^[ \t]*\\(%\\(?:[ \t].*\\)?\\)$") (1 'sayline-note))
      (,(sayline--below-header "^[ \t]*\\(-\\|[0-9]\\{1,2\\}\\.\\)[ \t]+[^ \t\n]") (1 ,mark))
      (,(sayline--below-header
         (concat "^[ \t]*\\([[:upper:]][[:upper:][:digit:]'’.-]*"
                 "\\(?:[ +]+[[:upper:]][[:upper:][:digit:]'’.-]*\\)*:\\)\\(?:[ \t]\\|$\\)"))
       (1 (and (let (case-fold-search) (string-match-p "\\`[^[:lower:]]*\\'" (match-string 1)))
               'sayline-speaker)))
      ("\\\\[!-/:-@[-`{-~]" 0 'sayline-escape)
      ("`[^`\n]+`" 0 'sayline-raw)
      ("\\_<https?://[^][:space:]<>\n]+" 0 'sayline-link)
      ("\\(\\[\\(?:[^][\n]\\|\\[[^][\n]*\\]\\)*\\]\\)" 1 'sayline-direction)
      (,(sayline--mark "\\({[^{}\n]+}\\)" "[^ \t]") (1 ,mark))
      ("\\(\\(?:\\. \\)\\{2\\}\\.\\|\\.\\{3,\\}\\|…\\)" 1 ,mark)
      (,(sayline--mark "\\(x\\)\\(?:[ \t]\\|$\\)" "[.!?…\"”*_~°<>)][ \t]") (1 ,mark))
      (,(sayline--mark "\\(xx+\\)\\(?:[ \t]\\|$\\)" "\\(?:^\\|[ \t]\\)") (1 ,mark))
      (,(sayline--mark "\\(//?\\)\\(?:[ \t]\\|$\\)" "\\(?:^\\|[^0-9][ \t]\\)") (1 ,mark))
      ("\\((\\(?:\\.\\|[0-9]\\{1,2\\}\\.[0-9]+s?\\|[0-9]\\{1,2\\}s\\))\\)" 1 ,mark)
      ("[↑↓↗↘‿]" 0 ,mark)
      (,(sayline--mark "\\(\\^\\)[[:alpha:]]" "\\(?:^\\|[ \t\"“(*_<>~]\\)") (1 ,mark))
      (,(sayline--mark "\\(:::*\\)\\(?:[ \t.,;!?…]\\|$\\)" "[[:alpha:]]") (1 ,mark))
      ,(funcall pair (sayline--pair (concat opens "\\(\"\\)") "\\(\"\\)" "\"") 'sayline-quoted)
      ,(funcall pair (sayline--pair "\\(\\*\\*\\)" "\\(\\*\\*\\)" "*") 'sayline-heavy)
      ,(funcall pair (sayline--pair (concat opens "\\(__\\)") "\\(__\\)" "_") 'sayline-heavy)
      ,(funcall pair (sayline--pair "\\(\\*\\)" "\\(\\*\\)" "*") 'sayline-stress)
      ,(funcall pair (sayline--pair (concat opens "\\(_\\)") (concat "\\(_\\)" ends) "_")
                'sayline-stress)
      ,(funcall pair (sayline--pair (concat opens "\\(~\\)") "\\(~\\)" "~") 'sayline-soft)
      ,(funcall pair (sayline--pair (concat opens "\\(°\\)") "\\(°\\)" "°") 'sayline-soft)
      ,(funcall pair (sayline--pair (concat opens "\\(>\\)") "\\(<\\)" "<>") 'sayline-quick)
      ,(funcall pair (sayline--pair (concat opens "\\(<\\)") "\\(>\\)" "<>") 'sayline-slow)))
  "What is coloured in a script, by its shape.")

;;; The modes

(defun sayline--window ()
  "How a script behaves in a buffer."
  (setq-local comment-start "% "
              comment-start-skip "%[ \t]+"
              comment-end ""
              outline-regexp "[ \t]*#\\{1,3\\}[ \t]+[^ \t\n]"
              outline-level (lambda () (save-excursion (skip-chars-forward " \t") (skip-chars-forward "#")))
              sentence-end-double-space nil)
  ;; A line end inside a thought means nothing, but nobody wants one put there while typing.
  (auto-fill-mode -1)
  (visual-line-mode 1))

;;;###autoload
(define-derived-mode sayline-mode text-mode "Sayline"
  "Scripts that are spoken to a camera."
  (sayline--window)
  (setq-local font-lock-defaults '(sayline--keywords t))
  (add-hook 'font-lock-extend-region-functions #'sayline--whole-header nil t))

;;;###autoload
(add-to-list 'auto-mode-alist '("\\.say\\'" . sayline-mode))

(defvar eglot-server-programs)
(defvar treesit-font-lock-feature-list)
(declare-function treesit-ready-p "treesit")
(declare-function treesit-parser-create "treesit")
(declare-function treesit-font-lock-rules "treesit")
(declare-function treesit-major-mode-setup "treesit")

(defconst sayline--queries
  "(header \"---\" @sayline-header)
(header_key) @sayline-key
(header_value) @sayline-value
(heading) @sayline-heading
[(item_marker) (divider)] @sayline-mark
(note) @sayline-note
(speaker) @sayline-speaker
(direction) @sayline-direction
(stress) @sayline-stress
(heavy_stress) @sayline-heavy
(soft) @sayline-soft
(quick) @sayline-quick
(slow) @sayline-slow
(quoted) @sayline-quoted
(stress \"delimiter\" @sayline-mark)
(heavy_stress \"delimiter\" @sayline-mark)
(soft \"delimiter\" @sayline-mark)
(quick \"delimiter\" @sayline-mark)
(slow \"delimiter\" @sayline-mark)
(quoted \"delimiter\" @sayline-mark)
[(pause) (beat) (breath) (reset) (micropause) (timed_pause) (step_up) (step_down) (end_up)
 (end_down) (stretch) (tie) (pronouncer) (say_as)] @sayline-mark
(escape) @sayline-escape
(code) @sayline-raw
(address) @sayline-link"
  "The grammar's colours; outer nodes stand before what lies inside them.")

;;;###autoload
(define-derived-mode sayline-ts-mode text-mode "Sayline"
  "Scripts that are spoken to a camera, coloured by their grammar.
This needs Emacs 29."
  (sayline--window)
  (unless (and (fboundp 'treesit-ready-p) (treesit-ready-p 'sayline))
    (user-error "Install the grammar first: docs/editors/emacs.md says how; or use M-x sayline-mode"))
  (treesit-parser-create 'sayline)
  (setq-local treesit-font-lock-feature-list '((script))
              treesit-font-lock-settings
              (treesit-font-lock-rules :language 'sayline :feature 'script :override t
                                       sayline--queries))
  (treesit-major-mode-setup))

;;; The server

(with-eval-after-load 'eglot
  (add-to-list 'eglot-server-programs
               `((sayline-mode sayline-ts-mode) . ,(lambda (&rest _) (list sayline-program "serve")))))

;;; What the server knows of the whole script

(declare-function eglot-current-server "eglot")
(declare-function eglot--TextDocumentIdentifier "eglot")
(declare-function jsonrpc-request "jsonrpc")

(defun sayline--ask (method params)
  "The server's answer to METHOD, once it has all that was typed.
PARAMS is a function from the script's identifier to the parameters."
  (let ((server (and (fboundp 'eglot-current-server) (eglot-current-server))))
    (unless server (user-error "No server runs: M-x eglot starts it"))
    (jsonrpc-request server method (funcall params (eglot--TextDocumentIdentifier))
                     :deferred method)))

(defun sayline--clock (seconds)
  "SECONDS as minutes and seconds."
  (let ((whole (round seconds)))
    (format "%d:%02d" (/ whole 60) (% whole 60))))

(defun sayline--run (run)
  "A RUN of sayline/times against its target: \"1:52 of 2:00 max\"."
  (let ((target (plist-get run :target)) (time (sayline--clock (plist-get run :seconds))))
    (if (not target) time
      (let ((low (plist-get target :low)) (high (plist-get target :high)))
        (concat time " of "
                (cond ((= low high) (sayline--clock high))
                      ((zerop low) (concat (sayline--clock high) " max"))
                      (t (concat (sayline--clock low) "-" (sayline--clock high)))))))))

(defun sayline-sections ()
  "Choose a section from a list with times and go to it."
  (interactive)
  (let* ((times (sayline--ask :sayline/times (lambda (script) (list :textDocument script))))
         (rows (mapcar (lambda (section)
                         (cons (format "%s%s: %s"
                                       (make-string (* 2 (1- (plist-get section :level))) ?\s)
                                       (plist-get section :name) (sayline--run section))
                               (plist-get (plist-get (plist-get section :range) :start) :line)))
                       (plist-get times :sections)))
         (choice (completing-read (format "%s, go to: " (sayline--run times)) rows nil t)))
    (goto-char (point-min))
    (forward-line (cdr (assoc choice rows)))))

(defun sayline-put-in-marks ()
  "Put in the few marks that a reader would likely follow."
  (interactive)
  (sayline--ask :workspace/executeCommand
                (lambda (script)
                  (list :command "sayline.markScript"
                        :arguments (vector (plist-get script :uri))))))

(defun sayline-stage (stage)
  "Write into the header how far the script is: STAGE is draft, mark or read."
  (interactive (list (completing-read "How far is the script? " '("draft" "mark" "read") nil t)))
  (save-excursion
    (save-restriction
      (widen)
      (let ((line (concat "stage: " stage "\n")) (end (sayline--header-end)))
        (goto-char (point-min))
        (cond ((not end) (insert "---\n" line "---\n\n"))
              ((re-search-forward "^[ \t]*stage[ \t]*:.*\n" end t) (replace-match line t t))
              (t (forward-line) (insert line)))))))

(provide 'sayline-mode)
;;; sayline-mode.el ends here
