"""The put-up line, as a person would say it: one tokenizer (tokens), and readers that each claim
the tokens they understand (process, days, counts). What nobody claims is a place, a food, a
method, or is named as not understood (services.batchwork.line)."""
