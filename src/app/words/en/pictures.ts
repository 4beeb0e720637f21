export const words = {
  rule: 'Pictures of labels',
  ruleHelp: 'Keeps the picture of each label that the camera reads at a load or splice.',
  keep: 'Keep pictures',
  days: 'Days that they are kept',
  megabytes: 'Room on each tablet, MB',
  fault: 'Pictures need 1 to 3650 days and 1 to 10000 MB.',
  shown: 'Picture of the label',
  notHere: 'The picture is not on this tablet. Ask at the tablet that read the label.',
  none: 'No picture was found.',
  broken: 'This picture is not the one that was kept. Tell a lead.',
  failed: 'The picture of the label was not kept. The verdict stands.',
  exported: 'Save the pictures of labels too',
} as const;
