# SPDX-License-Identifier: Apache-2.0
"""Prints the DICOM JSON of the files named, as pydicom sees them: {"path": {...}}, null where it cannot read one."""
import json
import sys

import pydicom

LIMIT = 1024


def tree(path):
    try:
        data_set = pydicom.dcmread(path)
        return data_set.to_json_dict(bulk_data_threshold=LIMIT, bulk_data_element_handler=lambda element: "elsewhere")
    except Exception as problem:  # what pydicom cannot express as JSON it cannot judge
        print(path, problem, file=sys.stderr)
        return None


json.dump({path: tree(path) for path in sys.argv[1:]}, sys.stdout)
