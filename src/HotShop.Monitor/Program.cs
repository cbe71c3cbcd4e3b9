using HotShop.Monitor.Commands;

#pragma warning disable RS0030 // The entry point hands out the real clock; everybody else takes it.
return await CommandLine.Run(args, TimeProvider.System);
#pragma warning restore RS0030
