"""The put-up line, held against a corpus of lines that was written before its grammar."""
