"""Pictures as rows of spans: pure functions of what they draw and how wide. No textual here."""
