// One browser and one server at a time: the machine that builds has two cores.
[assembly: CollectionBehavior(DisableTestParallelization = true)]
