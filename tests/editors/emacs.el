;;; emacs.el --- Emacs without a screen on the cases of colours.json -*- lexical-binding: t -*-
;; What the mode paints goes to $SAYLINE_OUT; then the server is started through Eglot, where that
;; is installed, and asked as a writer would ask it.  Run by `emacs' beside this file.
(require 'json)

(defun fail (format &rest values)
  (message "emacs: %s" (apply #'format format values))
  (kill-emacs 1))

(defconst outs '(stress heavy soft quick slow quoted))

;; The name of a face without its first word; a mark within words is a mark.
(defun name-at (position)
  (let* ((face (get-text-property position 'face))
         (faces (if (listp face) face (list face)))
         (names (mapcar (lambda (each) (intern (string-remove-prefix "sayline-" (symbol-name each))))
                        (delq nil faces))))
    (symbol-name (or (seq-find (lambda (name) (not (memq name outs))) names) (car names) 'text))))

(defun painted ()
  (font-lock-ensure)
  (let (pieces last)
    (dotimes (index (1- (point-max)))
      (let ((name (name-at (1+ index))) (text (string (char-after (1+ index)))))
        (if (and (equal name last) (not (equal text "\n")))
            (setcdr (car pieces) (concat (cdar pieces) text))
          (push (cons name text) pieces))
        (setq last (if (equal text "\n") nil name))))
    (vconcat (mapcar (lambda (piece) (vector (car piece) (cdr piece))) (nreverse pieces)))))

(defun wait-for (what condition)
  (let ((end (+ (float-time) 30)) value)
    (while (not (or (setq value (funcall condition)) (> (float-time) end)))
      (accept-process-output nil 0.05))
    (or value (fail "waited 30 s in vain for %s" what))))

(defun check-server ()
  (require 'flymake)
  (defvar sayline-program)
  (setq sayline-program (getenv "SAYLINE_PROGRAM"))
  (let ((server (progn (call-interactively #'eglot) (wait-for "the server" #'eglot-current-server))))
    (unless (equal (plist-get (eglot--TextDocumentItem) :languageId) "sayline")
      (fail "the language id is %s" (plist-get (eglot--TextDocumentItem) :languageId)))
    (flymake-start)
    (wait-for "the thought that runs on"
              (lambda () (seq-some (lambda (found) (string-match-p "3 sentences" (flymake-diagnostic-text found)))
                                   (flymake-diagnostics))))
    (let ((times (jsonrpc-request server :sayline/times (list :textDocument (eglot--TextDocumentIdentifier)))))
      (unless (= (length (plist-get times :sections)) 2) (fail "the times are %S" times)))
    (goto-char (point-min))
    (search-forward "square down")
    (let ((hover (jsonrpc-request server :textDocument/hover (eglot--TextDocumentPositionParams))))
      (unless (plist-get hover :contents) (fail "no hover")))
    (eglot-shutdown server)
    (message "emacs: findings, hover and times come through Eglot")))

(let ((mode-file (getenv "SAYLINE_MODE"))
      (byte-compile-error-on-warn t))
  (unless (byte-compile-file mode-file) (fail "the mode does not compile without a warning"))
  (load (concat mode-file "c") nil t))

(find-file (getenv "SAYLINE_SCRIPT"))
(unless (eq major-mode 'sayline-mode) (fail "a .say file has the mode %s" major-mode))
(outline-minor-mode 1)
(goto-char (point-min))
(outline-next-heading)
(unless (looking-at "# Hello") (fail "the outline begins at %S" (buffer-substring (point) (line-end-position))))

(with-temp-file (getenv "SAYLINE_QUERY")
  (insert (symbol-value 'sayline--queries)))
(let ((all (mapcar (lambda (row)
                     (with-temp-buffer
                       (insert (alist-get 'text row))
                       (sayline-mode)
                       (painted)))
                   (json-read-file (getenv "SAYLINE_CASES")))))
  (with-temp-file (getenv "SAYLINE_OUT") (insert (json-encode (vconcat all)))))

(if (require 'eglot nil t)
    (check-server)
  (message "emacs: there is no Eglot here (Debian: elpa-eglot), so the server is not started"))
