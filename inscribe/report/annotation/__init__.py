"""The signs' places as W3C Web Annotations."""
