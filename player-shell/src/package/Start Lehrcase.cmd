@echo off
rem Windows: starts Lehrcase from this folder, or from its copy on this laptop. Untested so far.
setlocal
set "HERE=%~dp0"
set "KIND=windows-x64"
if not exist "%HERE%program\%KIND%\bin\javaw.exe" (
  echo This folder has no program for Windows. Nothing was changed. Ask your teacher for one that has.
  pause
  exit /b 1
)
rem certutil of older systems writes the digits in pairs with blanks between them
for /f "delims=" %%a in ('certutil -hashfile "%HERE%program\bench.sums" SHA256 ^| findstr /r /c:"^[0-9a-f ][0-9a-f ]*$"') do set "ID=%%a"
if defined ID set "ID=%ID: =%"
if not defined ID set "ID=program"
set "RUN=%LOCALAPPDATA%\Lehrcase-program\%ID:~0,16%"
if not exist "%RUN%\whole.txt" (
  mkdir "%RUN%\program" 2>nul
  xcopy "%HERE%program\%KIND%" "%RUN%\program\%KIND%\" /E /V /Q /Y >nul && ^
  copy /V /Y "%HERE%program\lehrcase-bench.jar" "%RUN%\program\" >nul && ^
  copy /V /Y "%HERE%program\bench.options" "%RUN%\program\" >nul && ^
  echo whole>"%RUN%\whole.txt"
)
if not exist "%RUN%\whole.txt" set "RUN=%HERE:~0,-1%"
start "" "%RUN%\program\%KIND%\bin\javaw.exe" "@%RUN%\program\bench.options" "-Dlehrcase.folder=%HERE:~0,-1%" -jar "%RUN%\program\lehrcase-bench.jar" %*
