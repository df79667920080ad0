/** What the command says of itself. */
export const helpText = `boughlight: light in the crown of a small fruit tree, and what to prune.

  boughlight light FILE    how much light each shoot gets
  boughlight day FILE      when the sun falls on each shoot in one day, every ten minutes
  boughlight sky FILE      how much of the sky a node of a shoot sees, and what stands before it
  boughlight plan FILE     what to rub off, take out or tip, and why
  boughlight check FILE    whether the tree file is good, and what it holds
  boughlight scene FILE    the leaves, the wood and every ray, for another ray tracer

FILE is a tree file saved by Boughlight, or - for standard input.

  --json            the answer as JSON, for other programs
  --units UNITS     metric (as given) or us: feet and inches
  --seed N          other rays, 0 to 4294967295; as given 1: the same seed gives the same answer. Answers of two seeds
                    differ by as much as ± says
  --leaf-seed N     other leaves by the same rules, 0 to 4294967295; as given 1. Shoots of two such crowns differ by far
                    more than ±, which is that of the rays
  --waves N         waves of rays, 2 to 1000: four times as many halve the error
  --error P         light and scene: standard error wanted of the median shoot, in percent of open sky, 0.05 to 20: as many
                    waves as it takes, from 4 up to --waves or 64
  --from D --to D   light and scene: first and last day, YYYY-MM-DD; as given, leaf-out to the last useful fig
  --weather W       light, day, plan, scene: normal, as given, clear: every day without a cloud, or the path of an
                    hourly weather file ending in .epw, in place of the climate in the tree file
  --sky SKY         light, plan, scene: how the light of the sky lies over it: uniform, as given, overcast, clear,
                    all-weather: hour by hour as beam and diffuse light tell, or a CIE sky from 1 to 15
  --renewal         plan: ways to renew an old tree, too, with what is lost and when it is back
  --prove           plan: looks for a better choice of what to keep until none can be better by much, for up to some minutes
  --csv             plan: the cuts as a table for a spreadsheet, in the columns that the page saves, all advised ones ticked
  --nodes, --leaves light: the JSON tells every node, every leaf; day: every node
  --date D          plan: the day the work is for, day: the day looked at, YYYY-MM-DD; as given, the day of the sketch
  --boldness B      plan: gentle takes as little, bold as much, as may be for nearly the same worth; as given, balanced
  --worlds N        plan: plausible trees and years in which each cut is tried, 0 to 1000; as given 32, 0 for none
  --shoot S         sky: the shoot, by its name or its id
  --node N          sky: the node of the shoot, 1 at its base
  --glb OUT.glb     scene: writes the tree as a 3D model with its light as colours
  -h, --help        this page
  -v, --version     the version

A tree file that cannot be used or words that cannot be read end with exit code 2 and nothing on standard output.
The plan is an estimate from a sketch: look at the tree before each cut.
`;
