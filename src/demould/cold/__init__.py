"""How fast does it freeze and thaw?"""
