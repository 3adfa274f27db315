#!/usr/bin/env python3
"""Writes plain_words.inc from plain_words.tsv: every form of every row that is used, sorted.

Usage: make_plain_words.py           writes the file beside this script
       make_plain_words.py --check   exits 1 if the file is out of step
"""
import pathlib
import re
import sys

HERE = pathlib.Path(__file__).resolve().parent

# base: third person, past, participle, -ing. Regular verbs follow by rule.
IRREGULAR = {
    'begin': 'begins began begun beginning', 'bind': 'binds bound bound binding',
    'buy': 'buys bought bought buying', 'choose': 'chooses chose chosen choosing',
    'come': 'comes came come coming', 'cut': 'cuts cut cut cutting', 'do': 'does did done doing',
    'find': 'finds found found finding', 'get': 'gets got got getting',
    'give': 'gives gave given giving', 'go': 'goes went gone going',
    'have': 'has had had having', 'hurt': 'hurts hurt hurt hurting',
    'keep': 'keeps kept kept keeping', 'leave': 'leaves left left leaving',
    'lose': 'loses lost lost losing', 'make': 'makes made made making',
    'meet': 'meets met met meeting', 'see': 'sees saw seen seeing',
    'send': 'sends sent sent sending', 'set': 'sets set set setting',
    'show': 'shows showed shown showing', 'speed': 'speeds sped sped speeding',
    'spend': 'spends spent spent spending', 'take': 'takes took taken taking',
    'tell': 'tells told told telling', 'think': 'thinks thought thought thinking',
}
DOUBLING = {'drop', 'stop', 'plan', 'preplan', 'submit', 'transmit', 'concur'}


def verb_forms(verb):
    """base, third person, past, participle, -ing"""
    if verb in IRREGULAR:
        return [verb] + IRREGULAR[verb].split()
    third = verb + 's'
    if re.search(r'(s|sh|ch|x|z|o)$', verb):
        third = verb + 'es'
    if re.search(r'[^aeiou]y$', verb):
        third, past = verb[:-1] + 'ies', verb[:-1] + 'ied'
    elif verb.endswith('e'):
        past = verb + 'd'
    elif verb in DOUBLING:
        past = verb + verb[-1] + 'ed'
    else:
        past = verb + 'ed'
    if verb.endswith('e') and not verb.endswith('ee'):
        ing = verb[:-1] + 'ing'
    elif verb in DOUBLING:
        ing = verb + verb[-1] + 'ing'
    else:
        ing = verb + 'ing'
    return [verb, third, past, past, ing]


def phrase_forms(phrase):
    """The forms of a phrase whose first word is the verb ("successfully complete": the second)."""
    words = phrase.split()
    head = 1 if words[0] in ('adversely', 'successfully') else 0
    return [' '.join(words[:head] + [form] + words[head + 1:]) for form in verb_forms(words[head])]


def plural(noun):
    if re.search(r'[^aeiou]y$', noun):
        return noun[:-1] + 'ies'
    if re.search(r'(s|sh|ch|x)$', noun):
        return noun + 'es'
    return noun + 's'


def british(phrase):
    return re.sub(r'iz(e|es|ed|ing|ation)\b', r'is\1', phrase)


def expand(complex_, simple, form):
    """(written form, [swap, ...]) for every form of a row."""
    if 'v' in form:
        written = phrase_forms(complex_)
        swaps = [phrase_forms(s) for s in simple]
        for i in (0, 1, 4):
            yield written[i], [s[i] for s in swaps]
        if 'b' not in form:
            joined = [s[2] if s[2] == s[3] else f'{s[2]}~{s[3]}' for s in swaps]
            yield written[2], joined
        return
    if 'n' in form:
        if 'p' not in form:
            yield complex_, simple
        yield plural(complex_), [plural(s) for s in simple]
        return
    yield complex_, simple


def rows():
    seen = {}
    for line in (HERE / 'plain_words.tsv').read_text(encoding='utf-8').splitlines():
        if not line or line.startswith('#'):
            continue
        complex_, simple, heard, form = line.split('\t')[:4]
        if heard == 'never':
            continue
        simple = ['' if s == '(omit)' else s for s in simple.split(', ')]
        flags = []
        if 'v' in form or 'a' in form:
            flags.append('not_behind_article')
        if 'v' in form and 'a' in form:
            flags.append('noun_too')
        if 'o' in form:
            flags.append('opener')
        for written, swaps in expand(complex_, simple, form):
            for spelling in {written, british(written)}:
                seen.setdefault(spelling, ('|'.join(swaps), heard, flags))
    return sorted(seen.items())


def text():
    lines = ['// Made by make_plain_words.py from plain_words.tsv, which names the source: do not edit.']
    for written, (swaps, heard, flags) in rows():
        joined = ' | '.join(flags) or '0'
        lines.append(f'{{"{written}", "{swaps}", Stage::{heard}, {joined}}},')
    return '\n'.join(lines) + '\n'


def main():
    target = HERE / 'plain_words.inc'
    if sys.argv[1:] == ['--check']:
        if target.read_text(encoding='utf-8') != text():
            sys.exit('plain_words.inc is out of step: run server/rules/data/make_plain_words.py')
        return
    target.write_text(text(), encoding='utf-8')


if __name__ == '__main__':
    main()
