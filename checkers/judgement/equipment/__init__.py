"""Connected equipment: the device type it calls for, and whether a device fits it."""
