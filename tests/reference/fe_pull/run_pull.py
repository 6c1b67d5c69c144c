#!/usr/bin/env python3
"""Outward pull on one face or both: the model of ../fe/neighbours.py, on the cases in this folder.
run_pull.py NAME key=value ...   keys as there, with pull=both|mid|ends"""
import os, sys

HERE = os.path.dirname(os.path.abspath(__file__))
sys.path.insert(0, os.path.join(HERE, "..", "fe"))
import neighbours

neighbours.HERE, neighbours.CASES = HERE, "cases.csv"

if __name__ == "__main__":
    neighbours.main()
