Console.WriteLine("not built yet");
