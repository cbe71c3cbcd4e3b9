using Xunit.Sdk;
using Xunit.v3;

// Real brokers, browsers and processes on a small machine: side by side they would only wait for one another.
[assembly: Parallelization(Mode = ParallelMode.None)]
