import { dotnet } from './_framework/dotnet.js';

const answer = document.getElementById('answer');
try {
  const { getAssemblyExports, getConfig } = await dotnet.create();
  const assembly = await getAssemblyExports(getConfig().mainAssemblyName);
  answer.textContent = assembly.Halfsplit.BrowserSmoke.Program.Run();
  answer.dataset.state = 'done';
} catch (error) {
  answer.textContent = String(error?.stack ?? error);
  answer.dataset.state = 'failed';
}
