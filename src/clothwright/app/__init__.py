"""The app: the order reads as sentences, the table shows the paper.

Terminology
    slip      one order, told as sentences under a few paragraph words.
    word      a part of a sentence that opens when it is touched: a number, a choice.
    hand      who wrote a word: pencil (a rule), ink (the dressmaker), thread (basted).
    table     the pieces of paper beside the slip.
    room      one slip open at one or more browsers, with what is kept to redraw fast.
    basting   changes that are tried and not kept; stitched they are kept, unpicked
              they are gone.

It is a face: no drafting knowledge and no geometry of its own.
"""
