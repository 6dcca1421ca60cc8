"""The lint rules, by what they look at; each takes a step, its number and the bench, and yields complaints."""
