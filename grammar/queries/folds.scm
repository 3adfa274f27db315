[
  (header)
  (section)
] @fold
