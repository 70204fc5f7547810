Console.WriteLine("halfsplit");
