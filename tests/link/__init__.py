"""Tests of the link between stations and the desk."""
